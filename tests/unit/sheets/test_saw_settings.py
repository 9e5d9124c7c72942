from longpoint.pieces.piece import CutKind, EndCut
from longpoint.sheets.dialects import words_for
from longpoint.sheets.saw_settings import NO_BREAK, setting_figure, setting_remarks
from longpoint.sticks.order.saw_setting import SawSetting, Side
from longpoint.survey.house import Dialect

WORDS = words_for(Dialect.US)
MITRED = EndCut(kind=CutKind.MITRE, mitre_deg=45.0)


def test_a_setting_names_the_side_and_keeps_its_figure_beside_it() -> None:
    setting = SawSetting(swing=Side.LEFT, swing_deg=45.0)
    assert setting_figure(setting) == f"L{NO_BREAK}45.0"


def test_a_square_cut_is_called_square() -> None:
    assert setting_figure(SawSetting()) == "square"


def test_a_tilt_is_never_taken_for_a_swing() -> None:
    setting = SawSetting(swing=Side.LEFT, swing_deg=31.6, tilt=Side.RIGHT, tilt_deg=33.9)
    assert setting_figure(setting).replace(NO_BREAK, " ") == "L 31.6 + tilt R 33.9"


def test_the_dial_is_told_only_where_it_differs_from_the_true_angle() -> None:
    told = SawSetting(swing=Side.LEFT, swing_deg=45.0, dial_deg=44.9)
    same = SawSetting(swing=Side.LEFT, swing_deg=45.0, dial_deg=45.0)
    assert setting_remarks(told, MITRED, WORDS) == ("dial 44.9",)
    assert setting_remarks(same, MITRED, WORDS) == ()


def test_a_scribed_end_is_named_as_the_crew_names_it() -> None:
    cut = EndCut(kind=CutKind.SCRIBE, bevel_deg=45.0)
    assert setting_remarks(SawSetting(tilt=Side.LEFT, tilt_deg=45.0), cut, WORDS) == ("cope",)
