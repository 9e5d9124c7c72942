import math
from dataclasses import replace

import pytest

from longpoint.forecast.budget.house_budget import house_budget, is_saw_open, proved_saw
from longpoint.forecast.budget.records import Cause, ErrorBudget, ErrorName
from longpoint.forecast.chances import Imagined, forecast_faces
from longpoint.forecast.face_lines import FaceLines, face_lines
from longpoint.forecast.plain_lines import PlainLines
from longpoint.forecast.planned_face import planned_faces
from longpoint.forecast.records import HouseForecast
from longpoint.shape.fitted import Shapes
from longpoint.shape.opening_fit import fit_openings
from longpoint.solvers.numpy_lines import NumpyLines
from longpoint.survey.house import House
from longpoint.survey.house_file import read_house
from tests import house_documents

pytestmark = pytest.mark.no_cover

DRAWS = 4000


def a_house(count: int = 1, **defaults: object) -> House:
    """Return a house of like windows with an unproved saw and 70 mm faces."""
    document = house_documents.house(
        openings=[
            house_documents.window(mark=f"W{i + 1}", left=800, right=800, rising=1431, falling=1431)
            for i in range(count)
        ],
        saws={"S1": {"kerf": 2.4, "end_trim": 10}},
        profiles={
            "OG57": {"face": 70, "thickness": 18},
            "SK95": {"face": 95, "thickness": 16},
        },
    )
    document["defaults"] |= defaults
    return read_house(document).house


def lines_of(house: House) -> tuple[FaceLines, ...]:
    openings, _ = fit_openings(house)
    return tuple(
        face_lines(face) for face in planned_faces(house, Shapes(openings=openings), frozenset())
    )


def forecast(house: House, budget: ErrorBudget | None = None, seed: int = 1) -> HouseForecast:
    imagined = Imagined(engine=NumpyLines(), draws=DRAWS, seed=seed)
    return forecast_faces(house, lines_of(house), budget or house_budget(house), imagined)


def test_no_chance_is_better_than_that_of_its_parts() -> None:
    (face,) = forecast(a_house()).faces
    chances = face.chances
    assert 0.0 < chances.fits <= min(chances.gaps, chances.quirk)
    assert chances.all <= min(chances.fits, chances.faces)


def test_what_is_shared_makes_a_batch_go_right_or_wrong_as_one() -> None:
    found = forecast(a_house(8))
    alone = [face.chances.fits for face in found.faces]
    assert found.all_fit > math.prod(alone) + 0.1
    assert found.misfits_mean == pytest.approx(8 - sum(alone), abs=1e-9)
    assert found.misfits_p90 >= found.misfits_mean


def test_the_misfits_of_a_profile_are_those_of_its_faces() -> None:
    found = forecast(a_house(5))
    (profile,) = found.by_profile
    assert profile.profile == "OG57"
    assert len(profile.chances) == 6
    assert math.fsum(profile.chances) == pytest.approx(1.0)
    mean = math.fsum(k * chance for k, chance in enumerate(profile.chances))
    assert mean == pytest.approx(found.misfits_mean, abs=0.01)
    assert profile.chances[0] == pytest.approx(found.all_fit, abs=0.01)


def test_a_face_in_two_profiles_counts_in_both() -> None:
    house = a_house(2)
    first, second = house.openings
    mixed = replace(second, profiles=replace(second.profiles, head="SK95"))
    house = replace(house, openings=(first, mixed))
    misfits = {each.profile: each.chances for each in forecast(house).by_profile}
    assert [len(misfits["OG57"]), len(misfits["SK95"])] == [3, 2]


def test_a_proved_saw_makes_the_house_safer() -> None:
    house = a_house(3)
    before, after = forecast(house), forecast(house, proved_saw(house_budget(house)))
    assert after.all_fit > before.all_fit + 0.2
    assert before.faces[0].causes[0].cause is Cause.SAW
    assert after.faces[0].causes[0].share < before.faces[0].causes[0].share


def test_wider_limits_never_make_a_fit_less_likely() -> None:
    chances = [forecast(a_house(max_gap=gap)).faces[0].chances.fits for gap in (0.3, 0.5, 1.0)]
    assert chances == sorted(chances)
    assert chances[0] < chances[-1]


def test_the_same_house_is_forecast_alike_and_another_seed_nearly_so() -> None:
    house = a_house(2)
    assert forecast(house) == forecast(house)
    one, other = forecast(house, seed=1), forecast(house, seed=2)
    assert one.faces[0].chances.fits != other.faces[0].chances.fits
    assert one.faces[0].chances.fits == pytest.approx(other.faces[0].chances.fits, abs=0.04)


def test_plain_python_and_numpy_say_the_same() -> None:
    house = a_house(2)
    found = [
        forecast_faces(
            house,
            lines_of(house),
            house_budget(house),
            Imagined(engine=engine, draws=500, seed=3),
        )
        for engine in (PlainLines(), NumpyLines())
    ]
    assert found[0] == found[1]


def test_a_known_bias_of_the_saw_opens_the_joints_either_way() -> None:
    house = a_house()
    budget = proved_saw(house_budget(house))
    level = forecast(house, budget).faces[0].chances.gaps
    steep = forecast(house, budget.changed(ErrorName.SAW_SCALE, bias=0.2)).faces[0].chances.gaps
    shallow = forecast(house, budget.changed(ErrorName.SAW_SCALE, bias=-0.2)).faces[0].chances.gaps
    # 0.2 degrees on all eight cuts open every joint by 2 sqrt 2 x 70 x 0.2 deg = 0.69 mm.
    assert level > 0.95
    assert steep < 0.1
    assert shallow < 0.1


def test_a_leg_that_can_hardly_be_tapped_makes_the_fit_less_likely() -> None:
    free = forecast(a_house()).faces[0].chances.fits
    held = forecast(a_house(tap_room=0.5)).faces[0].chances.fits
    assert held < free - 0.02


def test_a_house_without_openings_has_nothing_to_forecast() -> None:
    house = replace(a_house(), openings=())
    found = forecast(house)
    assert found.faces == ()
    assert found.all_fit == 1.0
    assert found.misfits_p90 == 0


def test_a_saw_known_to_cut_steep_is_the_cause_and_proving_it_the_cure() -> None:
    house = a_house()
    known = proved_saw(house_budget(house)).changed(ErrorName.SAW_SCALE, bias=0.2, u=0.02)
    (face,) = forecast(house, known).faces
    assert face.causes[0].cause is Cause.SAW
    assert face.causes[0].share > 0.5
    assert is_saw_open(house, known)
    assert not is_saw_open(
        replace(house, saw=replace(house.saw, found_left_deg=45.0, found_right_deg=45.0)),
        proved_saw(known),
    )
