from dataclasses import replace
from decimal import Decimal

from longpoint.house_plan import HousePlan, Spares
from longpoint.quantities.formatting import running_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Heading, Note, Paragraph, Table
from longpoint.sheets.order_sheet import order_blocks
from longpoint.sticks.plan import CutPlan, Saved
from longpoint.survey.profiles import Stock
from tests.unit.sheets.sample import HOUSE, PLAN, STICKS, with_house

BARE = replace(PLAN, spares=Spares())


def rows_under(blocks: tuple[Block, ...], heading: str) -> list[list[str]]:
    at = next(n for n, b in enumerate(blocks) if isinstance(b, Heading) and b.text == heading)
    table = blocks[at + 1]
    assert isinstance(table, Table)
    return [[c.text if isinstance(c, Cell) else c for c in row] for row in table.rows]


def paragraphs(blocks: tuple[Block, ...]) -> str:
    return " ".join(block.text for block in blocks if isinstance(block, Paragraph))


def test_the_order_covers_the_new_sticks_of_the_plan_exactly() -> None:
    bought = {(row[0], row[1]): int(row[2]) for row in rows_under(order_blocks(BARE), "To buy")}
    assert bought == {("OG57", "5400"): 2, ("OG57", "2700"): 1, ("SK95", "4200"): 1}


def test_the_money_is_added_up() -> None:
    stock = (*HOUSE.stock, Stock(profile="OG57", length_mm=2700.0, price=Decimal("7.95")))
    blocks = order_blocks(replace(with_house(stock=stock), spares=Spares()))
    assert "All together 52.45, at" in paragraphs(blocks)  # 2 x 14.60 + 7.95 + 15.30


def test_a_spare_stands_in_a_line_of_its_own_and_in_the_money() -> None:
    stock = (*HOUSE.stock, Stock(profile="OG57", length_mm=2700.0, price=Decimal("7.95")))
    blocks = order_blocks(with_house(stock=stock))
    rows = rows_under(blocks, "To buy")
    assert [row[:3] for row in rows if row[0] == "OG57"] == [
        ["OG57", "5400", "2"],
        ["OG57", "2700", "1"],
        ["OG57", "5400", "1"],
    ]
    assert "67.05, 14.60 of it for spares" in paragraphs(blocks)


def test_a_missing_price_is_said() -> None:
    assert "Not every stick has a price" in paragraphs(order_blocks(PLAN))
    bare = with_house(stock=tuple(replace(s, price=None) for s in HOUSE.stock))
    assert "No prices were given" in paragraphs(order_blocks(bare))


def test_an_offcut_is_taken_from_the_rack_and_not_bought() -> None:
    assert rows_under(order_blocks(PLAN), "From the rack") == [["OG57", "2700", "1", ""]]


def test_a_plan_that_is_only_the_best_found_says_so() -> None:
    rows = rows_under(order_blocks(PLAN), "How near to the least")
    assert rows[0][-1] == "proved: no plan buys less"
    assert rows[1][-1] == "best found; not proved to be the least"
    assert rows[1][3:5] == ["4.2 m", "2.4 m"]


def test_only_what_is_long_enough_to_keep_goes_back_on_the_rack() -> None:
    left = rows_under(order_blocks(PLAN), "Left over for the rack")
    assert all(float(row[2]) >= HOUSE.saw.keep_mm for row in left)
    kept = [stick for stick in STICKS if stick.left_mm >= HOUSE.saw.keep_mm]
    assert len(left) == len(kept)


def test_a_profile_without_stock_is_named() -> None:
    without = replace(PLAN, cut_plan=CutPlan(sticks=STICKS[:4]), house=replace(HOUSE, stock=()))
    notes = [b for b in order_blocks(without) if isinstance(b, Note)]
    assert notes[0].title == "LOOK · SK95"
    assert "2 pieces have no stick" in notes[0].text


def test_held_places_are_said_to_be_missing_from_the_order() -> None:
    notes = [b.text for b in order_blocks(PLAN) if isinstance(b, Note)]
    assert any("W3, W4" in text for text in notes)


def test_nothing_to_buy_is_said() -> None:
    empty = replace(BARE, pieces=(), cut_plan=CutPlan(), held=frozenset())
    assert paragraphs(order_blocks(empty)) == "Nothing has to be bought."


def test_running_lengths_are_metres_or_feet() -> None:
    assert running_length(3048.0, Units.INCH) == "10.0 ft"
    assert running_length(3048.0, Units.MM) == "3.0 m"


def saying(saved: Saved, units: Units = Units.MM) -> str:
    plan = with_house(units=units)
    return paragraphs(
        order_blocks(replace(plan, cut_plan=replace(plan.cut_plan, savings=(saved,))))
    )


def test_what_is_saved_is_rounded_down_and_never_up() -> None:
    metres = Saved(profile="SK95", can_turn=True, cost=4.2, long_point_bound=5.39)
    assert "SK95: at least 1.1 m less than any plan by long points." in saying(metres)
    # 1190 mm are 3.904 ft.
    assert "SK95: at least 3.9 ft less" in saying(metres, Units.INCH)
    money = Saved(profile="OG57", can_turn=True, cost=29.2, long_point_bound=31.0, unit="price")
    assert "OG57: at least 1.80 less than any plan by long points." in saying(money)


def test_where_nothing_is_saved_the_order_says_so() -> None:
    for bound in (4.2, 4.29, 3.0):
        nothing = Saved(profile="SK95", can_turn=True, cost=4.2, long_point_bound=bound)
        assert "SK95: none proved." in saying(nothing)
    moulded = Saved(profile="SK95", can_turn=False, cost=4.2, long_point_bound=0.0)
    assert "SK95: none promised, since pieces can't be turned" in saying(moulded)
    assert "OG57: none proved; it wasn't worked out" in saying(moulded)


def test_profiles_share_a_sentence_only_where_nothing_is_saved() -> None:
    assert "OG57, SK95: none promised, since" in paragraphs(order_blocks(PLAN))
    both = tuple(
        Saved(profile=name, can_turn=True, cost=4.2, long_point_bound=5.4)
        for name in ("OG57", "SK95")
    )
    said = paragraphs(order_blocks(replace(PLAN, cut_plan=replace(PLAN.cut_plan, savings=both))))
    assert "OG57: at least 1.2 m less" in said
    assert "SK95: at least 1.2 m less" in said


def test_a_section_is_drawn_beside_its_profile_only_where_the_house_has_one() -> None:
    def pictures(plan: HousePlan) -> dict[str, bool]:
        blocks = order_blocks(plan)
        at = next(n for n, b in enumerate(blocks) if b == Heading(text="To buy"))
        table = blocks[at + 1]
        assert isinstance(table, Table)
        cells = [row[0] for row in table.rows if isinstance(row[0], Cell)]
        return {cell.text: cell.picture is not None for cell in cells}

    assert not any(pictures(PLAN).values())
    section = ((0.0, 0.0), (57.0, 0.0), (57.0, 12.0), (50.0, 18.0), (0.0, 18.0))
    profiles = tuple(
        replace(profile, section=section if profile.name == "OG57" else ())
        for profile in HOUSE.profiles
    )
    assert pictures(with_house(profiles=profiles)) == {"OG57": True, "SK95": False}
