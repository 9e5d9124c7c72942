"""All trim of the cottage against its key: corners, stairs, blocks, linings, rails and beads."""

import pytest

from longpoint.errors import Severity
from longpoint.pieces.piece import Piece, Role
from tests.scenarios.houses import planned

KEY_DEG = 0.15


def pieces(place: str) -> dict[str, Piece]:
    plan = planned("fallow-end", mended=True)
    found = {piece.mark: piece for piece in plan.pieces if piece.place == place}
    assert found, place
    return found


@pytest.mark.parametrize(
    ("run", "side", "saw_deg"),
    [
        ("R6", "right", 44.75),
        ("R7l", "left", 44.75),
        ("R7r", "right", 45.5),
        ("R8", "left", 45.5),
        ("R12", "right", 22.5),
        ("R13", "left", 22.5),
        ("R13", "right", 22.5),
        ("R14", "left", 22.5),
    ],
)
def test_chimney_and_splay_are_cut_by_half_their_turn(run: str, side: str, saw_deg: float) -> None:
    (piece,) = pieces(run).values()
    cut = piece.left if side == "left" else piece.right

    assert -cut.bevel_deg == pytest.approx(saw_deg, abs=0.005), "face longer than back"
    assert cut.mitre_deg == 0.0


def test_skirting_turns_up_the_stair_at_half_its_pitch() -> None:
    raked = pieces("ST")["ST-rake"]
    (level,) = pieces("R14").values()

    assert abs(raked.left.mitre_deg) == pytest.approx(19.0, abs=0.05)
    assert abs(raked.right.mitre_deg) == pytest.approx(19.0, abs=0.05)
    assert raked.left.mitre_deg == pytest.approx(-raked.right.mitre_deg)
    assert abs(level.right.mitre_deg) == pytest.approx(19.0, abs=0.05)
    assert any("126.9" in note for note in raked.notes)


def test_a_plumb_cut_through_it_would_stand_higher_and_that_is_said() -> None:
    plan = planned("fallow-end", mended=True)
    (stair,) = (trim for trim in plan.trims if trim.entry.mark == "ST")

    assert any("152" in line and "120" in line for line in stair.plan.lines)


def test_legs_stand_on_plinth_blocks_of_two_hundred() -> None:
    for mark in ("D1", "D2"):
        blocks = [p for p in pieces(mark).values() if p.role is Role.PLINTH_BLOCK]
        assert [block.inner_mm for block in blocks] == pytest.approx([200.0, 200.0])
        assert {block.profile for block in blocks} == {"PB95"}


def test_the_shy_window_gets_four_extension_pieces_six_deep() -> None:
    found = pieces("X8").values()

    assert len(found) == 4
    assert all("rip to 6" in " ".join(piece.notes) for piece in found)
    assert {piece.thickness_mm for piece in found} == {18.0}


def test_door_stops_stand_at_the_four_doors() -> None:
    heads = [piece for mark, piece in pieces("DS").items() if mark.endswith("-head")]

    assert [round(piece.inner_mm) for piece in heads] == [761, 761, 711, 709]
    assert len(pieces("DS")) == 12


def test_the_picture_rail_goes_round_the_parlour_and_stops_at_the_door() -> None:
    found = pieces("PR")
    walls = {mark.split("-")[1] for mark in found}

    assert walls == {"N", "E", "S", "W"}
    assert found["PR-S-1"].back_mm == pytest.approx(1480.0, abs=0.1)


def test_the_kitchen_bead_is_joined_out_of_two() -> None:
    assert sum(piece.inner_mm for piece in pieces("QD").values()) == pytest.approx(3402.0, abs=0.1)


def test_boards_run_past_their_architraves_and_aprons_end_with_them() -> None:
    for mark in ("W1", "W2", "W3", "W4"):
        found = pieces(mark)
        board, apron = found[f"{mark}-board"], found[f"{mark}-apron"]
        legs = (found[f"{mark}-left-leg"], found[f"{mark}-right-leg"])
        assert board.inner_mm == pytest.approx(apron.inner_mm + 2 * 45.0)
        assert apron.inner_mm == pytest.approx(found[f"{mark}-head"].outer_mm, abs=25.0)
        assert all(leg.width_mm == 90.0 for leg in legs)


def test_a_floor_that_falls_is_followed_or_scribed() -> None:
    notes = {run: " ".join(n for p in pieces(run).values() for n in p.notes) for run in ("R2",)}

    assert "6" in notes["R2"]
    assert "1900" in notes["R2"]


def test_with_its_readings_mended_only_what_is_still_in_doubt_is_held() -> None:
    plan = planned("fallow-end", mended=True)
    stops = {finding.place for finding in plan.findings if finding.severity is Severity.STOP}

    assert stops == {"W4b", "Bed 1 E"}
