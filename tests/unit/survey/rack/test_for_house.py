from dataclasses import replace
from datetime import date

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.survey.house_file import read_house, readings_code
from longpoint.survey.profiles import Offcut
from longpoint.survey.rack import Gone, Out, Rack, RackPiece, Section
from longpoint.survey.rack.for_house import rack_findings, usable, with_rack
from tests.house_documents import house, window

DOCUMENT = house(openings=[window(bottom=1187)], offcuts=[{"profile": "OG57", "length": 740}])
HOUSE = read_house(DOCUMENT).house
PROFILE = HOUSE.profile("OG57")
TODAY = date(2026, 11, 26)


def section(**changes: float | str) -> Section:
    same = Section(name="OG57", width_mm=PROFILE.width_mm, thickness_mm=PROFILE.thickness_mm)
    return replace(same, **changes)  # type: ignore[arg-type]


def piece(
    label: str, length_mm: float, day: date, key: str = "S", gone: Gone | None = None
) -> RackPiece:
    return RackPiece(label=label, section=key, length_mm=length_mm, put_up=day, gone=gone)


RACK = Rack(
    sections=(("S", section()), ("T", section(name="SQ66"))),
    pieces=(
        piece("EMKR", 900.0, date(2026, 5, 1)),
        piece("QC7R", 1310.5, date(2025, 5, 1)),
        piece("6WPK", 800.0, date(2025, 5, 1), key="T"),
        piece("HJCK", 4.0, date(2025, 5, 1)),
        piece("W7TG", 900.0, date(2025, 5, 1), gone=Gone(why=Out.THROWN, on=TODAY)),
    ),
)


def test_what_is_there_of_the_houses_profiles_can_be_used_the_oldest_first() -> None:
    assert [each.label for each, _ in usable(HOUSE, RACK)] == ["QC7R", "EMKR"]


def test_the_rack_stands_before_the_houses_own_offcuts_and_is_read_with_them() -> None:
    read = read_house(with_rack(DOCUMENT, HOUSE, RACK)).house

    assert read.offcuts == (
        Offcut(profile="OG57", length_mm=1310.5, label="QC7R"),
        Offcut(profile="OG57", length_mm=900.0, label="EMKR"),
        Offcut(profile="OG57", length_mm=740.0),
    )


def test_a_document_with_an_older_rack_gets_the_new_one_instead() -> None:
    once = with_rack(DOCUMENT, HOUSE, RACK)

    assert with_rack(once, HOUSE, RACK) == once


def test_a_house_in_inches_gets_the_same_lengths() -> None:
    inches = replace(HOUSE, units=Units.INCH)
    rows = with_rack({**DOCUMENT, "offcuts": []}, inches, RACK)["offcuts"]

    assert isinstance(rows, list)
    assert rows[0]["length"] == "1310.5 mm"


def test_offcuts_that_are_no_list_stay_for_the_reader_to_refuse() -> None:
    assert with_rack({"offcuts": 3}, HOUSE, RACK) == {"offcuts": 3}


def test_the_readings_code_is_that_of_the_readings_whatever_is_on_the_rack() -> None:
    read = read_house(with_rack(DOCUMENT, HOUSE, RACK)).house

    assert readings_code(read) == readings_code(HOUSE)


def test_old_offcuts_are_named_with_their_days() -> None:
    (found,) = rack_findings(HOUSE, replace(RACK, old_after_days=365), TODAY)

    # From 1 May 2025 to 26 November 2026: a year, and 30 + 30 + 31 + 31 + 30 + 31 + 26 days.
    assert found.code == "offcut-old"
    assert found.severity is Severity.NOTE
    assert "QC7R (1310.5 mm, 574 days)" in found.read
    assert "EMKR" not in found.read


def test_what_is_asked_for_goes_before_what_the_rack_says() -> None:
    old = rack_findings(HOUSE, replace(RACK, old_after_days=365), TODAY, old_after_days=100)

    assert "EMKR" in old[0].read
    assert rack_findings(HOUSE, RACK, TODAY) == ()


def test_one_name_for_two_sizes_is_said() -> None:
    rack = Rack(sections=(("S", section(width_mm=70.0)),))
    (found,) = rack_findings(HOUSE, rack, TODAY)

    assert found.code == "rack-section-differs"
    both = replace(rack, sections=(*rack.sections, ("S 2", section())))
    assert rack_findings(HOUSE, both, TODAY) == ()
