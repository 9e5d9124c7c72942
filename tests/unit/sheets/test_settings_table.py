from longpoint.sheets.blocks import Cell, Table
from longpoint.sheets.settings_table import ends_words, settings_blocks
from longpoint.sticks.order.saw_order import SettingUse
from longpoint.sticks.order.saw_setting import SawSetting, Side


def use(
    swing: Side, deg: float, *pieces: str, dial: float | None = None, tilt: float = 0.0
) -> SettingUse:
    setting = SawSetting(
        swing=swing,
        swing_deg=deg,
        dial_deg=dial,
        tilt=Side.LEFT if tilt else Side.SQUARE,
        tilt_deg=tilt,
    )
    return SettingUse(setting=setting, count=len(pieces), pieces=tuple(dict.fromkeys(pieces)))


def cells(*uses: SettingUse) -> list[tuple[str, ...]]:
    _, table = settings_blocks(uses)
    assert isinstance(table, Table)
    return [tuple(_words(cell) for cell in row) for row in table.rows]


def _words(cell: str | Cell) -> str:
    if isinstance(cell, str):
        return cell
    return " ".join(filter(None, (cell.text, cell.behind, *cell.small))).replace("\xa0", " ")


def test_left_and_right_of_an_angle_stand_in_one_line() -> None:
    assert cells(
        use(Side.SQUARE, 0.0, "p", "p"),
        use(Side.LEFT, 45.0, "p", "q", dial=44.9),
        use(Side.RIGHT, 45.0, "p", dial=45.1),
        use(Side.LEFT, 44.6, "q", dial=44.5),
        use(Side.RIGHT, 44.6, "r", "q", dial=44.7),
    ) == [
        ("square 2 ends", "", "", ""),
        ("45.0", "2 dial 44.9", "1 dial 45.1", ""),
        ("44.6", "1 dial 44.5", "2 dial 44.7", "q, r"),
    ]


def test_two_dial_figures_of_one_angle_stand_in_two_lines() -> None:
    assert cells(
        use(Side.LEFT, 44.6, "p", dial=44.5),
        use(Side.LEFT, 44.6, "q", dial=44.6),
        use(Side.RIGHT, 44.6, "r", dial=44.7),
    ) == [
        ("44.6", "1 dial 44.5", "1 dial 44.7", "p, r"),
        ("44.6", "1 dial 44.6", "", "q"),
    ]


def test_a_tilt_and_a_compound_cut_have_lines_of_their_own() -> None:
    assert cells(use(Side.SQUARE, 0.0, "p", tilt=44.8), use(Side.RIGHT, 31.6, "q", tilt=30.0)) == [
        ("tilt 44.8", "1", "", "p"),
        ("R 31.6 + tilt L 30.0", "", "1", "q"),
    ]


def test_the_stops_are_named_only_where_they_cut_what_they_say() -> None:
    square, odd = use(Side.SQUARE, 0.0, "p", "q"), use(Side.LEFT, 44.0, "p")
    true = use(Side.LEFT, 45.0, "p", dial=45.0)
    off = use(Side.LEFT, 45.0, "p", dial=44.8)
    rest = ", 2 square, 1 at angles set by hand"
    assert ends_words((square, true, odd)) == f"1 end on the 45 stops{rest}"
    assert ends_words((square, off, odd)) == f"1 end at 45, by the dial figure{rest}"


def test_nothing_to_cut_has_no_table() -> None:
    assert settings_blocks(()) == ()
