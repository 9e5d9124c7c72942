from dataclasses import replace

import pytest

from longpoint.quantities.length import Units
from longpoint.sheets.terminal import findings_text, pieces_text, plan_text
from longpoint.sticks.plan import CutPlan
from tests.unit.sheets.sample import HOUSE, OPENINGS, PIECES, PLAN, with_house


@pytest.mark.parametrize("width", [20, 50, 80, 100, 300])
def test_no_line_is_longer_than_the_terminal(width: int) -> None:
    held_width = min(100, max(50, width))
    for text in (
        plan_text(PLAN, width),
        pieces_text(PLAN, width=width),
        findings_text(HOUSE, PLAN.findings, width),
    ):
        assert max(map(len, text.splitlines())) <= held_width


def test_every_piece_is_named_with_its_figure() -> None:
    text = plan_text(PLAN)
    assert all(piece.mark in text for piece in PIECES)
    assert "R 45.0 |   954.5   | L 45.0" in text


def test_held_places_come_before_anything_else() -> None:
    text = plan_text(PLAN)
    assert text.index("HOLD, no lengths given: W3, W4") < text.index("OG57-1")
    assert "W3-" not in text


def test_the_forecast_stands_between_the_findings_and_the_cuts() -> None:
    text = plan_text(PLAN)
    assert text.index("? LOOK W1") < text.index("Will it close?") < text.index("OG57-1")
    assert "Will it close?" not in plan_text(replace(PLAN, outlook=None))


def test_the_text_is_plain_ascii_but_for_what_the_house_brings() -> None:
    assert plan_text(PLAN).isascii()
    assert pieces_text(PLAN).isascii()


def test_pieces_can_be_asked_for_by_mark() -> None:
    text = pieces_text(PLAN, "W2")
    assert "W2-head (OG57): hook left 954.5; inner 896; outer 1010; left R 45.0" in text
    assert "sum: 886.0 + 2 x 5 + 57" in text
    assert "W1-" not in text


def test_a_held_mark_gets_no_lengths() -> None:
    text = pieces_text(PLAN, "W3")
    assert "HOLD, no lengths given: W3" in text
    assert "inner" not in text


def test_findings_stand_by_weight() -> None:
    text = findings_text(HOUSE, PLAN.findings)
    assert text.index("! STOP W3 [") < text.index("! STOP W4 [") < text.index("? LOOK W1")
    assert text.index("? LOOK W1") < text.index("- NOTE Finch Rise")
    assert text.endswith("2 places to read again before cutting.")


def test_nothing_to_say_is_said() -> None:
    assert "Nothing stands out" in findings_text(HOUSE, ())
    empty = replace(PLAN, pieces=(), cut_plan=CutPlan(), findings=(), held=frozenset())
    assert "Nothing to cut." in plan_text(empty)
    assert "Nothing to cut." in pieces_text(empty)


def test_a_long_mark_stands_on_a_line_of_its_own() -> None:
    long = "Window-" * 8
    pieces = tuple(replace(p, mark=p.mark.replace("W2", long)) for p in PIECES)
    sticks = tuple(
        replace(
            stick,
            laid=tuple(replace(laid, piece=laid.piece.replace("W2", long)) for laid in stick.laid),
        )
        for stick in PLAN.cut_plan.sticks
    )
    plan = replace(PLAN, pieces=pieces, cut_plan=replace(PLAN.cut_plan, sticks=sticks))
    lines = plan_text(plan).splitlines()
    at = next(n for n, line in enumerate(lines) if line.endswith(f"{long}-head"))
    assert "|   954.5   |" in lines[at + 1]


def test_inches_are_named_at_the_top() -> None:
    text = plan_text(with_house(units=Units.INCH, openings=OPENINGS))
    assert "lengths in inches" in text
    assert "49 7/16" in text
    assert "figures in inches" in text
    assert "figures in in;" not in text


def test_places_are_counted_not_stops() -> None:
    stop = PLAN.findings[0]
    twice = (stop, replace(stop, code="off-siblings"))
    assert findings_text(HOUSE, twice).endswith("1 place to read again before cutting.")


def test_a_stop_that_can_be_accepted_says_how() -> None:
    lines = findings_text(HOUSE, PLAN.findings).splitlines()
    assert lines.count('  If it is so: accept = ["misclosure"] in W3') == 1
    assert not any('accept = ["unknown-key"]' in line for line in lines)


def test_the_cut_list_has_titles_above_its_columns() -> None:
    lines = plan_text(PLAN).splitlines()
    titles = next(line for line in lines if line.startswith(" No.  Piece"))
    row = next(line for line in lines if "W1-head " in line)
    assert [n for n, sign in enumerate(titles) if sign == "|"] == [
        n for n, sign in enumerate(row) if sign == "|"
    ]
    assert titles.index("Piece") == row.index("W1-head")


def test_a_held_mark_shows_its_stops_and_names_the_first_sheet() -> None:
    text = pieces_text(PLAN, "W3")
    assert "! STOP W3 [misclosure]: W3 was read 1187" in text
    assert 'accept = ["misclosure"] in W3' in text
    assert "first sheet, Before you cut." in text
    assert "W4" not in text
    assert "first sheet" not in pieces_text(PLAN, "W1")


def test_a_run_held_for_its_wall_shows_the_stop_of_the_wall() -> None:
    stop = replace(PLAN.findings[0], code="wall-sum", place="Loft W")
    held = replace(PLAN, findings=(stop,), held=frozenset({"S1"}), pieces=())
    assert "! STOP Loft W [wall-sum]" in pieces_text(held, "S1")
