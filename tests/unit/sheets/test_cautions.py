from longpoint.quantities.length import Units
from longpoint.sheets.cautions import common_cautions, fixing_cautions, saw_cautions
from tests.unit.sheets.sample import PIECES


def test_short_pieces_are_named_and_the_limit_is_called_ours() -> None:
    text = " ".join(saw_cautions(PIECES, Units.MM))
    assert "150 mm" in text
    assert "our choice, no source" in text
    assert "Here: S1-return." in text


def test_no_piece_is_named_when_none_is_short() -> None:
    assert "Here:" not in " ".join(saw_cautions(PIECES[:4], Units.INCH))


def test_the_law_and_the_tool_come_first_on_every_sheet() -> None:
    for cautions in (saw_cautions(PIECES, Units.MM), fixing_cautions(), common_cautions()):
        assert any("come first" in line for line in cautions)
