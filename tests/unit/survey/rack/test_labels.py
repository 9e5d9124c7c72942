import pytest

from longpoint.survey.rack.labels import (
    BASE,
    LABEL_SIGNS,
    MOST_LABELS,
    as_written,
    is_label,
    label,
    one_slip_away,
)


def test_every_number_has_a_label_of_its_own() -> None:
    labels = {label(number) for number in range(MOST_LABELS)}

    assert len(labels) == MOST_LABELS == 23**3
    assert {len(each) for each in labels} == {4}


@pytest.mark.parametrize("number", [-1, MOST_LABELS])
def test_there_are_no_labels_beyond_the_last(number: int) -> None:
    with pytest.raises(ValueError, match="no label"):
        label(number)


def test_the_signs_are_a_prime_number_and_none_is_taken_for_another() -> None:
    assert all(BASE % divisor for divisor in range(2, BASE))
    assert not set(LABEL_SIGNS) & set("0O1IL2Z5S8BUV")


def test_the_check_sign_is_the_weighted_sum() -> None:
    # By hand: E, M, K stand at 8, 14 and 13; 2 x 8 + 3 x 14 + 4 x 13 = 110 = 4 x 23 + 18, an R.
    assert [LABEL_SIGNS.index(sign) for sign in "EMKR"] == [8, 14, 13, 18]
    assert is_label("EMKR")


@pytest.mark.parametrize("text", ["", "EMK", "EMKRR", "EMKO", "emkr", "ÉMKR"])
def test_what_has_other_signs_or_another_length_is_no_label(text: str) -> None:
    assert not is_label(text)


def test_blanks_hyphens_and_small_letters_are_no_slip() -> None:
    assert as_written(" em-k r\n") == "EMKR"


def test_the_labels_one_slip_away_are_found() -> None:
    known = ["EMKR", "QC7R", "6WPK"]

    assert one_slip_away("EMKP", known) == ("EMKR",)
    assert one_slip_away("MEKR", known) == ("EMKR",)
    assert one_slip_away("KMER", known) == ()
    assert one_slip_away("EMK", known) == ()
