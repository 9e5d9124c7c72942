from dataclasses import replace

from longpoint.pieces.piece import Role
from longpoint.pieces.run_sums import run_sum
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Cell
from longpoint.sheets.cut_cells import end_cells, figure_cell, key_figure, sum_line
from longpoint.sheets.dialects import words_for
from longpoint.sheets.printed_lengths import printed_lengths
from longpoint.sheets.saw_settings import NO_BREAK
from longpoint.speech.said import say
from longpoint.survey.house import Dialect
from tests.country import english
from tests.unit.sheets.sample import HOUSE, PIECES, SKIRTING_PIECES, by_mark

WORDS = words_for(Dialect.UK)
LENGTHS = printed_lengths(PIECES)
(HEAD,) = by_mark("W2-head")


def figures(cells: tuple[Cell, Cell]) -> tuple[str, str]:
    left, right = (cell.text.replace(NO_BREAK, " ") for cell in cells)
    return left, right


def test_a_square_head_is_swung_right_at_its_left_end_and_left_at_its_right() -> None:
    assert figures(end_cells(HEAD, HOUSE.saw, WORDS)) == ("R 45.0", "L 45.0")


def test_the_two_ends_look_at_each_other_across_the_figure() -> None:
    left, right = end_cells(HEAD, HOUSE.saw, WORDS)
    assert left.picture_last
    assert not right.picture_last


def test_a_piece_turned_end_for_end_is_hooked_at_the_other_end() -> None:
    lengths = LENGTHS[HEAD.mark]
    assert key_figure(HEAD, lengths, Units.MM) == ("954.5", "hook left")
    assert key_figure(HEAD, lengths, Units.MM, is_turned=True) == ("954.5", "hook right")


def test_turning_a_piece_keeps_its_leans_and_changes_its_ends() -> None:
    (leg,) = by_mark("D1-left-leg")
    assert figures(end_cells(leg, HOUSE.saw, WORDS)) == ("square", "L 45.2")
    assert figures(end_cells(leg, HOUSE.saw, WORDS, is_turned=True)) == ("L 45.2", "square")


def test_skirting_goes_by_the_longer_of_back_and_face() -> None:
    run, back = SKIRTING_PIECES
    assert key_figure(run, LENGTHS[run.mark], Units.MM) == ("2284", "back")
    assert key_figure(back, LENGTHS[back.mark], Units.MM) == ("18", "face")


def test_the_figure_and_its_fraction_stay_on_one_line() -> None:
    cell = figure_cell(HEAD, LENGTHS[HEAD.mark], Units.INCH)
    assert " " not in cell.text
    assert cell.text.replace(NO_BREAK, " ") == "37 9/16"


def test_the_sum_behind_a_figure_is_shown() -> None:
    assert sum_line(HEAD) == f"Sum: {HEAD.hand_sum}"
    assert sum_line(replace(HEAD, hand_sum="")) == ""
    assert sum_line(replace(HEAD, role=Role.RUN, hand_sum="as read 900")) == "as read 900"


def test_the_sum_is_in_the_words_of_the_country() -> None:
    hand_sum = run_sum(say("before the skirting"), [3568.0])
    run = replace(HEAD, role=Role.RUN, hand_sum=hand_sum)
    assert english(Dialect.US).text(sum_line(run)) == "before the baseboard 3568"
    assert english(Dialect.NZ).text(sum_line(run)) == hand_sum
