from typing import Any

from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.sketch import Line, Sketch, Stroke
from longpoint.catalogue.trim import Asked, TrimKind, TrimPlan
from longpoint.errors import PieceError
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import CutKind, EndCut, Role
from longpoint.pipeline import plan_house
from longpoint.sheets.blocks import Block, Drawing, Heading, Note, Paragraph, Table, Together
from longpoint.sheets.book import house_sheets
from longpoint.sheets.html import sheet_html
from longpoint.sheets.plan_json import plan_document
from longpoint.sheets.terminal import pieces_text
from longpoint.sheets.trim_sheet import trim_blocks
from longpoint.survey.house_file import read_house
from tests.house_documents import house


def plan_rack(asked: Asked) -> TrimPlan:
    if asked.entry.room == "Attic":
        raise PieceError("The attic.", "No rack fits there.", "Leave it out.")
    cut = EndCut(kind=CutKind.MITRE, mitre_deg=30.0)
    piece = asked.piece("top", Role.SHELF, 700.0, outer_mm=754.848, left=cut, notes=("plane it",))
    line = Line(points=((0.0, 0.0), (700.0, 0.0), (700.0, 95.0)), stroke=Stroke.TIMBER)
    return TrimPlan(
        pieces=(piece,), sketches=(Sketch(lines=(line,)),), lines=("Angles lie flat on the saw.",)
    )


RACK = TrimKind(name="rack", title="a rack", asks=(), plan=plan_rack)


def planned(*entries: dict[str, Any]) -> HousePlan:
    trims = [{"mark": f"R{n}", "profile": "SK95", **e} for n, e in enumerate(entries, start=1)]
    return plan_house(read_house(house(trims=trims), trim_tables((RACK,))), kinds=(RACK,))


def flat(blocks: tuple[Block, ...]) -> list[Block]:
    return [
        each
        for block in blocks
        for each in (block.blocks if isinstance(block, Together) else (block,))
    ]


def test_a_trim_stands_with_its_drawing_its_sentences_and_its_pieces() -> None:
    blocks = flat(trim_blocks(planned({"kind": "rack", "room": "Hall"})))

    assert [type(block) for block in blocks] == [Heading, Drawing, Paragraph, Table]
    heading, _, told, table = blocks
    assert isinstance(heading, Heading)
    assert heading.text == "R1 · rack · Hall"
    assert isinstance(told, Paragraph)
    assert told.text == "Angles lie flat on the saw."
    assert isinstance(table, Table)
    assert table.steps == ((0, ("plane it",)),)


def test_a_held_trim_stands_there_with_its_reason() -> None:
    plan = planned({"kind": "rack", "room": "Attic"}, {"kind": "peg"})
    blocks = flat(trim_blocks(plan))

    headings = [block.text for block in blocks if isinstance(block, Heading)]
    assert headings == ["R1 · rack · Attic · HOLD", "R2 · could not be read · HOLD"]
    assert all("STOP" in block.title for block in blocks if isinstance(block, Note))
    assert sum(isinstance(block, Note) for block in blocks) == 2


def test_the_sheet_is_there_only_where_there_is_other_trim() -> None:
    assert "trims" in [sheet.name for sheet in house_sheets(planned({"kind": "rack"}))]
    assert "trims" in [sheet.name for sheet in house_sheets(planned({"kind": "peg"}))]
    assert "trims" not in [sheet.name for sheet in house_sheets(planned())]


def test_what_else_is_to_be_done_stands_on_every_sheet_of_the_piece() -> None:
    plan = planned({"kind": "rack"})
    pages = {sheet.name: sheet_html(sheet) for sheet in house_sheets(plan)}

    assert "plane it" in pages["trims"]
    assert "plane it" in pages["cut"]
    assert "then: plane it" in pieces_text(plan, "R1")


def test_the_plan_tells_programs_of_it() -> None:
    document = plan_document(planned({"kind": "rack", "room": "Hall"}))

    (piece,) = document["pieces"]
    assert (piece["trim"], piece["notes"]) == ("R1", ["plane it"])
    (trim,) = document["trims"]
    assert (trim["kind"], trim["room"]) == ("rack", "Hall")
