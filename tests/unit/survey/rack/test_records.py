from dataclasses import replace
from datetime import date

import pytest

from longpoint.errors import SurveyError
from longpoint.survey.profiles import Profile
from longpoint.survey.rack import Gone, Out, Rack, RackPiece, Section
from longpoint.survey.rack.labels import MOST_LABELS, label

OGEE = Profile(name="OG57", width_mm=57.0, thickness_mm=18.0)
DAY = date(2026, 3, 1)


def piece(name: str, day: date = DAY, gone: Gone | None = None) -> RackPiece:
    return RackPiece(label=name, section="OG57", length_mm=900.0, put_up=day, gone=gone)


def rack(*pieces: RackPiece) -> Rack:
    return replace(Rack().with_section(OGEE)[0], pieces=pieces)


@pytest.mark.parametrize(
    ("other", "is_same"),
    [
        (OGEE, True),
        (replace(OGEE, name="og57", width_mm=57.2), True),
        (replace(OGEE, width_mm=58.0), False),
        (replace(OGEE, thickness_mm=15.0), False),
        (replace(OGEE, reversible=True), False),
        (replace(OGEE, name="OG58"), False),
    ],
)
def test_a_section_is_known_by_its_name_size_and_edges(other: Profile, is_same: bool) -> None:
    section = Section(name="OG57", width_mm=57.0, thickness_mm=18.0)

    assert section.is_of(other) == is_same


def test_a_profile_gets_one_section_and_another_size_of_that_name_a_second() -> None:
    once, key = Rack().with_section(OGEE)
    again, same = once.with_section(OGEE)
    twice, other = again.with_section(replace(OGEE, width_mm=69.0))

    assert (key, same, other) == ("OG57", "OG57", "OG57 2")
    assert len(twice.sections) == 2


def test_what_is_on_the_rack_comes_the_oldest_first_and_what_is_gone_not_at_all() -> None:
    gone = Gone(why=Out.USED, on=DAY)
    found = rack(piece("EMKR", date(2026, 5, 1)), piece("QC7R", DAY), piece("6WPK", DAY, gone=gone))

    assert [each.label for each in found.there] == ["QC7R", "EMKR"]
    assert len(found.pieces) == 3


def test_an_offcut_counts_its_days_and_never_less_than_none() -> None:
    assert piece("EMKR").age_days(date(2026, 3, 31)) == 30
    assert piece("EMKR").age_days(date(2026, 2, 1)) == 0


def test_a_label_is_found_however_it_is_written() -> None:
    assert rack(piece("EMKR")).piece(" em-kr ").label == "EMKR"


def test_a_misread_label_is_caught_and_those_alike_are_named() -> None:
    with pytest.raises(SurveyError) as refused:
        rack(piece("EMKR"), piece("QC7R")).piece("EMKP")
    assert "EMKR" in refused.value.do
    assert "QC7R" not in refused.value.do


@pytest.mark.parametrize("written", ["6WPK", "HJCK", ""])
def test_a_label_that_is_not_on_the_rack_is_refused(written: str) -> None:
    found = rack(piece("EMKR"), piece("6WPK", gone=Gone(why=Out.THROWN, on=DAY)))
    with pytest.raises(SurveyError):
        found.piece(written)


def test_what_is_taken_out_stays_in_the_file_with_what_came_of_it() -> None:
    gone = Gone(why=Out.THROWN, on=date(2026, 6, 1))
    after = rack(piece("EMKR"), piece("QC7R")).without("emkr", gone)

    assert [each.gone for each in after.pieces] == [gone, None]


def test_a_label_is_never_given_twice_even_where_one_was_taken_by_hand() -> None:
    second = label(1)
    found = rack(piece(second))
    for _ in range(3):
        found, _ = found.with_piece(piece(""))

    assert len({each.label for each in found.pieces}) == 4


def test_when_all_labels_are_given_that_is_said() -> None:
    full = rack(*(piece(label(number)) for number in range(MOST_LABELS)))
    with pytest.raises(SurveyError, match="no label left"):
        full.with_piece(piece(""))
