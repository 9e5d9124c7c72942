from dataclasses import replace
from datetime import date

from longpoint.quantities.length import Units
from longpoint.render.pdf import render_pdf
from longpoint.sheets.blocks import Drawing, Outline
from longpoint.sheets.html import sheet_html
from longpoint.sheets.rack_sheet import rack_sheets, rack_text_lines
from longpoint.survey.rack import Gone, Out, Rack
from tests.unit.sheets.sample_rack import RACK, TODAY


def test_the_screen_lists_each_section_the_longest_first() -> None:
    lines = rack_text_lines(RACK, TODAY)

    assert lines == (
        "On the rack: 3 offcuts.",
        "",
        "OG57 (57 x 18 mm)",
        "  QC7R     1310.5  rough / rough; put up by hand; OLD: 574 days; primed",
        "  EMKR        900  mitre -45.0 / rough; Finch Rise; 209 days",
        "",
        "SQ66 (66 x 18 mm, the same from both edges)",
        "  6WPK        640  square / rough; Finch Rise; 1 day",
    )


def test_what_is_old_is_told_by_the_days_asked_for() -> None:
    assert "OLD: 209 days" in "\n".join(rack_text_lines(RACK, TODAY, old_after_days=200))


def test_what_is_gone_is_on_no_list() -> None:
    gone = replace(RACK.pieces[0], gone=Gone(why=Out.THROWN, on=TODAY))
    rack = replace(RACK, pieces=(gone, *RACK.pieces[1:]))

    assert "EMKR" not in "\n".join(rack_text_lines(rack, TODAY))
    assert "EMKR" not in sheet_html(rack_sheets(rack, TODAY, ())[0])


def test_labels_stand_three_across_each_with_an_edge_to_cut_along() -> None:
    pieces = (*RACK.there, RACK.there[0])
    _, sheet = rack_sheets(RACK, TODAY, pieces)
    rows = [block for block in sheet.blocks if isinstance(block, Drawing)]

    edges = [sum(isinstance(mark, Outline) for mark in row.marks) for row in rows]
    assert edges == [3, 1]
    assert rows[0].described == "Labels: QC7R, EMKR, 6WPK."
    assert all(piece.label in sheet_html(sheet) for piece in pieces)


def test_a_long_name_stays_on_its_label() -> None:
    long = replace(RACK.pieces[0], house="The old rectory at Nether Marsh")
    _, sheet = rack_sheets(RACK, TODAY, (long,))

    assert "The old rectory a... · 2026-05-01" in sheet_html(sheet)


def test_without_labels_there_is_the_list_alone() -> None:
    assert [sheet.name for sheet in rack_sheets(RACK, TODAY, ())] == ["rack"]


def test_the_head_says_of_which_day_it_is_and_nothing_of_readings() -> None:
    html = sheet_html(rack_sheets(RACK, TODAY, ())[0])

    assert "rack of <b>2026-11-26</b>" in html
    assert "readings" not in html.partition("</header>")[0].partition("<body>")[2]


def test_an_empty_rack_says_so() -> None:
    (sheet,) = rack_sheets(Rack(), TODAY, ())

    assert "There is nothing on the rack." in sheet_html(sheet)
    assert rack_text_lines(Rack(), date(2026, 1, 1)) == ("On the rack: 0 offcuts.",)


def test_a_rack_in_inches_is_printed_in_inches() -> None:
    lines = rack_text_lines(replace(RACK, units=Units.INCH), TODAY)

    assert any("51 5/8" in line for line in lines)


def test_it_goes_on_paper() -> None:
    assert render_pdf(rack_sheets(RACK, TODAY, RACK.there)).startswith(b"%PDF")
