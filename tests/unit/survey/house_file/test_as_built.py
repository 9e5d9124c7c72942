from typing import Any

import pytest

from longpoint.errors import Severity
from longpoint.survey.as_built import AsBuilt, JointRead
from longpoint.survey.house_file import read_house
from longpoint.survey.openings import Opening
from longpoint.survey.per_side import PerSide
from tests.house_documents import SIZE, codes, defaults, door, found, house, the_opening, window

NONE = (None, None, None)


def as_built(written: object) -> AsBuilt:
    read = the_opening(window(as_built=written)).as_built
    assert read is not None
    return read


def test_gaps_stand_in_the_order_of_the_corners_heel_before_toe() -> None:
    gaps = {"tl": [0, "?"], "bl": [0.35, "0.1"], "br": [-0.2, 0]}

    assert as_built({"gaps": gaps}).gaps == (
        JointRead(heel_mm=0.35, toe_mm=0.1),
        JointRead(heel_mm=-0.2, toe_mm=0.0),
        None,
        JointRead(heel_mm=0.0, toe_mm=None),
    )


def test_a_side_is_read_at_three_spots_at_its_ends_or_in_its_middle() -> None:
    quirks = {"left": [5, "5.5", 4], "head": [5, "?"], "right": 4.5, "sill": ["?"]}

    assert as_built({"quirks": quirks}).quirks == PerSide(
        left=(5.0, 5.5, 4.0),
        head=(5.0, None, None),
        right=(None, 4.5, None),
        bottom=NONE,
    )


def test_steps_are_read_at_the_corners() -> None:
    assert as_built({"steps": {"tr": 0.2, "bl": "?"}}).steps_mm == (None, None, 0.2, None)


def test_in_inches_it_is_in_inches() -> None:
    metric = {key: f"{value} mm" for key, value in SIZE.items()}
    opening = window(**metric, as_built={"gaps": {"bl": ["1/64", "-0.01"]}})
    named = {"face": "2 1/4", "thickness": "11/16"}
    inches = {
        "profiles": {"OG57": named, "SK95": named},
        "defaults": defaults(quirk="3/16", quirk_band=["1/8", "1/4"], max_gap="1/64", saw=None),
        "saws": {},
    }

    read = the_opening(opening, units="in", **inches).as_built

    assert read is not None
    (bl, *_) = read.gaps
    assert bl is not None
    assert bl.heel_mm == pytest.approx(25.4 / 64)
    assert bl.toe_mm == pytest.approx(-0.254)


@pytest.mark.parametrize("nothing", [{}, {"gaps": {}}, {"gaps": {"bl": ["?", "?"]}}])
def test_what_says_nothing_is_nothing(nothing: object) -> None:
    assert the_opening(window(as_built=nothing)).as_built is None
    assert the_opening(window()).as_built is None


GOOD: dict[str, Any] = {"gaps": {"tl": [0.3, 0]}, "quirks": {"head": [5, 5, 5]}}


def with_bad(part: str, **bad: object) -> dict[str, Any]:
    return {**GOOD, part: {**GOOD.get(part, {}), **bad}}


@pytest.mark.parametrize(
    ("written", "said"),
    [
        (with_bad("gaps", bl="wide"), "as_built.gaps.bl"),
        (with_bad("gaps", bl=0.3), "as_built.gaps.bl"),
        (with_bad("gaps", bl=[0.1, 0.2, 0.3]), "as_built.gaps.bl"),
        (with_bad("gaps", bl=[True, "?"]), "as_built.gaps.bl"),
        (with_bad("gaps", bl=[31, "?"]), "as_built.gaps.bl"),
        (with_bad("gaps", bottom_left=[0, 0]), "bottom_left"),
        (with_bad("quirks", left=[]), "as_built.quirks.left"),
        (with_bad("quirks", left=[5, 5, 5, 5]), "as_built.quirks.left"),
        (with_bad("quirks", left=None), "as_built.quirks.left"),
        (with_bad("steps", bl=-0.1), "as_built.steps.bl"),
        ({**GOOD, "steps": 0.2}, "as_built.steps"),
        ({**GOOD, "gasp": {}}, "gasp"),
    ],
)
def test_a_bad_part_is_left_out_with_a_warning_and_holds_nothing(
    written: dict[str, Any], said: str
) -> None:
    result = read_house(house(openings=[window(as_built=written)]))

    (finding,) = result.findings
    assert (finding.code, finding.severity, finding.place) == (
        "as-built-unreadable",
        Severity.WARNING,
        "W1",
    )
    assert said in finding.read
    assert result.house.openings[0].as_built == as_built(GOOD)


def test_a_bad_figure_does_not_cost_the_good_one_beside_it() -> None:
    written = {"gaps": {"bl": [0.3, "x"]}, "quirks": {"left": ["x", 5, "y"]}}

    result = read_house(house(openings=[window(as_built=written)]))

    assert codes(result) == ["as-built-unreadable"] * 2
    read = result.house.openings[0].as_built
    assert read is not None
    assert read.gaps[0] == JointRead(heel_mm=0.3, toe_mm=None)
    assert read.quirks.left == (None, 5.0, None)


@pytest.mark.parametrize("written", [5, "tight", [0.3, 0]])
def test_what_is_no_table_is_left_out_with_a_warning(written: object) -> None:
    result = read_house(house(openings=[window(as_built=written)]))

    assert codes(result) == ["as-built-unreadable"]
    assert result.house.openings[0].as_built is None


def two_faced(**b: object) -> Opening:
    return the_opening(window(faces=2, as_built=GOOD, b=b))


def test_the_second_face_has_its_own_and_stays_the_mirror_without_readings() -> None:
    opening = two_faced(as_built={"steps": {"bl": 1}})

    assert opening.readings_b is None
    assert opening.as_built == as_built(GOOD)
    assert opening.as_built_b == as_built({"steps": {"bl": 1}})
    assert two_faced(top=1187, left=462).as_built_b is None


def test_a_bad_part_of_the_second_face_is_named_there() -> None:
    bad = {"as_built": {"steps": {"bl": "x"}}}

    result = read_house(house(openings=[window(faces=2, b=bad)]))

    assert found(result, "as-built-unreadable")[0].read.startswith("b.as_built.steps.bl")


def test_a_gap_at_a_corner_that_has_no_mitre_is_told() -> None:
    written = {"gaps": {"bl": [0.3, 0], "tl": [0, 0]}}

    result = read_house(house(openings=[door(as_built=written)]))

    (finding,) = result.findings
    assert (finding.code, finding.severity) == ("key-unused", Severity.NOTE)
    assert "at bl" in finding.read
