"""Chances of a fit beside an independent forecast of the same budget; both are model output.

The other forecast solved its linear programmes with another solver and drew with another stream.
Its rounding, and 40 000 draws, leave it within about 0.003. An opening is 1200 by 1050, its quirk
4.5 and its gaps 0.5 unless said.

It doesn't tell how its tapered openings lie to the one width and the one height that are read. We
take these for the mean of two sides, unless said; it matters where the quirk has little room.
"""

import math
from collections.abc import Sequence
from statistics import NormalDist

import pytest

from longpoint.forecast.budget.house_budget import house_budget
from longpoint.forecast.budget.records import ErrorName
from longpoint.forecast.face_lines import FACE_STEP_MM, step_opening
from longpoint.forecast.lines import LineHouse
from tests.unit.forecast.fit_houses import (
    ENGINE,
    SEED,
    biased,
    chances,
    door,
    house_of,
    in_plane,
    leaning,
    longer,
    nailed,
    tallied,
    weighed_with,
    window,
    with_saw,
)

FEW, MANY = 6000, 40_000
WITHIN = 0.012
# Of 6000 draws three standard deviations are up to 0.019; the seed is fixed.
WITHIN_OF_FEW = 0.018

# Face and gap: chances with every cut past its angle by 0, 0.05, 0.1, 0.2 and 0.3 degree.
BIASES_DEG = (0.0, 0.05, 0.1, 0.2, 0.3)
WINDOWS = {
    (57.0, 0.3): (0.996, 0.936, 0.427, 0.0, 0.0),
    (57.0, 0.5): (0.998, 0.998, 0.986, 0.113, 0.0),
    (57.0, 1.0): (0.998, 0.998, 0.998, 0.997, 0.930),
    (70.0, 0.3): (0.981, 0.801, 0.187, 0.0, 0.0),
    (70.0, 0.5): (0.993, 0.990, 0.866, 0.009, 0.0),
    (70.0, 1.0): (0.993, 0.993, 0.992, 0.987, 0.215),
    (95.0, 0.3): (0.875, 0.502, 0.042, 0.0, 0.0),
    (95.0, 0.5): (0.959, 0.900, 0.408, 0.0, 0.0),
    (95.0, 1.0): (0.960, 0.960, 0.960, 0.496, 0.0),
}
DOORS = {
    0.5: (0.996, 0.995, 0.970, 0.271, 0.001),
    0.3: (0.993, 0.953, 0.670, 0.018, 0.0),
}
# Quirk: chances by what the opening is out of square, width and height read alone.
LEANS_MM = (0.0, 1.0, 2.0, 3.0, 5.0)
QUIRKS = {
    4.5: (0.990, 0.990, 0.990, 0.989, 0.978),
    6.0: (0.990, 0.990, 0.990, 0.990, 0.987),
}
TIGHT_QUIRKS = {
    2.0: (0.876, 0.873, 0.854, 0.792, 0.432),
    3.0: (0.976, 0.975, 0.973, 0.960, 0.803),
}
# The same cut to its true shape, each angle set by hand within 0.10.
HAND_SET = {3.0: 0.887, 4.5: 0.911, 6.0: 0.911}
# Legs that give by so much: by what the opening is out of square; 500 draws.
NAILED = {
    0.5: (0.946, 0.944, 0.940, 0.924, 0.740),
    1.0: (0.998, 0.998, 0.996, 0.992, 0.922),
    1.8: (1.000, 1.000, 1.000, 1.000, 0.980),
}
# Size and face: chances by the exact allowance for the slant of the tape, and by a flat 1 mm.
SLANTS = {
    (450.0, 450.0, 70.0): (0.994, 0.607),
    (600.0, 900.0, 70.0): (0.993, 0.956),
    (1200.0, 1050.0, 70.0): (0.990, 0.989),
    (1200.0, 1050.0, 95.0): (0.900, 0.796),
    (2400.0, 1400.0, 70.0): (0.947, 0.947),
}
# Thickness and lie: chances that four corners are level within 0.3, 0.5 and 1.0 mm.
STEPS = {
    (0.1, 0.1): (0.724, 0.985, 1.000),
    (0.1, 0.25): (0.249, 0.714, 0.998),
    (0.2, 0.25): (0.122, 0.462, 0.968),
}
STEP_LIMITS_MM = (0.3, 0.5, 1.0)


def close(found: Sequence[float], expected: Sequence[float], within: float) -> None:
    assert found == pytest.approx(expected, abs=within)


def window_row(face_mm: float, gap_mm: float, draws: int) -> list[float]:
    house = house_of([window(1200.0, 1050.0)], face_mm=face_mm, gap_mm=gap_mm)
    (face,) = in_plane(house)
    return chances((weighed_with(house, face, biased(house, b)) for b in BIASES_DEG), draws)


@pytest.mark.parametrize("setting", [(57.0, 0.3), (70.0, 0.5)])
def test_a_window_by_what_its_saw_is_out(setting: tuple[float, float]) -> None:
    close(window_row(*setting, FEW), WINDOWS[setting], WITHIN_OF_FEW)


@pytest.mark.long
@pytest.mark.parametrize("setting", WINDOWS)
def test_windows_of_three_faces_and_three_gaps(setting: tuple[float, float]) -> None:
    close(window_row(*setting, MANY), WINDOWS[setting], WITHIN)


def door_row(gap_mm: float, draws: int) -> list[float]:
    house = house_of([door(900.0, 2050.0)], gap_mm=gap_mm)
    (face,) = in_plane(house)
    return chances((weighed_with(house, face, biased(house, b)) for b in BIASES_DEG), draws)


def test_a_door_has_two_mitres_and_no_loop() -> None:
    close(door_row(0.5, FEW), DOORS[0.5], WITHIN_OF_FEW)


@pytest.mark.long
@pytest.mark.parametrize("gap_mm", DOORS)
def test_doors_by_what_their_saw_is_out(gap_mm: float) -> None:
    close(door_row(gap_mm, MANY), DOORS[gap_mm], WITHIN)


def lean_row(quirk_mm: float, draws: int, *, is_mean_read: bool = True) -> list[float]:
    house = house_of([window(1200.0, 1050.0)], quirk_mm=quirk_mm)
    (face,) = in_plane(house)
    budget = biased(house, 0.05)
    leans = (leaning(face.face, lean_mm) for lean_mm in LEANS_MM)
    return chances(
        (weighed_with(house, face, budget, lean, is_mean_read=is_mean_read) for lean in leans),
        draws,
    )


def test_a_square_frame_hides_five_millimetres_of_lean_in_its_quirk() -> None:
    close(lean_row(4.5, FEW), QUIRKS[4.5], WITHIN_OF_FEW)


@pytest.mark.long
@pytest.mark.parametrize("quirk_mm", QUIRKS)
def test_square_frames_on_leaning_openings(quirk_mm: float) -> None:
    close(lean_row(quirk_mm, MANY), QUIRKS[quirk_mm], WITHIN)


@pytest.mark.long
@pytest.mark.parametrize("quirk_mm", TIGHT_QUIRKS)
def test_square_frames_in_small_quirks(quirk_mm: float) -> None:
    # Between a mean read and one side read, and our lists are a little hopeful where it is tight.
    hopeful = lean_row(quirk_mm, MANY)
    wary = lean_row(quirk_mm, MANY, is_mean_read=False)
    for least, expected, most in zip(wary, TIGHT_QUIRKS[quirk_mm], hopeful, strict=True):
        assert least - 0.03 < expected < most + 0.03


@pytest.mark.long
@pytest.mark.parametrize("quirk_mm", HAND_SET)
def test_angles_set_by_hand_cost_more_than_they_cure_in_a_wide_quirk(quirk_mm: float) -> None:
    house = house_of([window(1200.0, 1050.0)], quirk_mm=quirk_mm)
    (face,) = in_plane(house)
    budget = biased(house, 0.05).changed(ErrorName.STOP_CUT, u=0.10)
    found = chances([weighed_with(house, face, budget)], MANY)
    close(found, [HAND_SET[quirk_mm]], 0.012 if quirk_mm > 4.0 else 0.03)


def nailed_row(room_mm: float, draws: int) -> list[float]:
    house = house_of([window(1200.0, 1050.0)])
    (free,) = in_plane(house)
    face = nailed(free, room_mm)
    # No bow of the reveal, and a small taper: a fifth of the usual one is ours.
    budget = (
        biased(house, 0.05).changed(ErrorName.REVEAL_BOW, u=0.0).changed(ErrorName.TAPER, u=0.2)
    )
    leans = (leaning(face.face, lean_mm) for lean_mm in LEANS_MM)
    return chances((weighed_with(house, face, budget, lean) for lean in leans), draws)


@pytest.mark.long
@pytest.mark.parametrize("room_mm", NAILED)
def test_legs_nailed_hard_leave_less_room_to_share_a_lean(room_mm: float) -> None:
    # Three standard deviations of 500 draws, at most 0.06 where half of them fit.
    for found, expected in zip(nailed_row(room_mm, MANY), NAILED[room_mm], strict=True):
        sd = math.sqrt(expected * (1.0 - expected) / 500.0)
        assert found == pytest.approx(expected, abs=WITHIN + 3.0 * sd)


def slant_row(size: tuple[float, float, float], draws: int) -> list[float]:
    """Chances by the exact and by the flat allowance, one of two sides read."""
    width_mm, height_mm, face_mm = size
    house = house_of([window(width_mm, height_mm)], face_mm=face_mm)
    (face,) = in_plane(house)
    flat = []
    for opening_mm in (width_mm, height_mm) * 2:
        projection_mm = opening_mm + 2.0 * 4.5 + face_mm
        flat.append(1.0 - (math.hypot(projection_mm, face_mm) - projection_mm))
    budget = biased(house, 0.05)
    return chances(
        (
            weighed_with(house, face, budget, is_mean_read=False),
            weighed_with(house, face, budget, longer(face.face, flat), is_mean_read=False),
        ),
        draws,
    )


def test_a_flat_millimetre_for_the_slant_steals_the_quirk_of_a_small_window() -> None:
    exact, flat = slant_row((450.0, 450.0, 70.0), FEW)
    assert exact == pytest.approx(0.994, abs=WITHIN_OF_FEW)
    assert flat < 0.7


@pytest.mark.long
@pytest.mark.parametrize("size", SLANTS)
def test_the_exact_allowance_for_the_slant_and_a_flat_one(
    size: tuple[float, float, float],
) -> None:
    exact, flat = slant_row(size, MANY)
    assert exact == pytest.approx(SLANTS[size][0], abs=WITHIN)
    # Where pieces are nearly two millimetres short, no room of the quirk is left on one side, and
    # both forecasts' lists are hopeful: exact programmes of 700 draws give 0.55 for the smallest.
    assert flat == pytest.approx(SLANTS[size][1], abs=0.08 if size[0] < 500.0 else 0.03)


def step_row(thickness_mm: float, lie_mm: float, draws: int) -> list[float]:
    house = house_of([window(1200.0, 1050.0)])
    (face,) = in_plane(house)
    found = []
    for limit_mm in STEP_LIMITS_MM:
        scale = FACE_STEP_MM / limit_mm
        budget = (
            house_budget(house)
            .changed(ErrorName.THICKNESS, u=thickness_mm * scale)
            .changed(ErrorName.LIE, u=lie_mm * scale)
        )
        lines = LineHouse(openings=(step_opening(face, budget),), shared=(), draws=draws, seed=SEED)
        found.append(ENGINE.tally(lines).openings[0].fits[0] / draws)
    return found


@pytest.mark.parametrize("sizes", STEPS)
def test_faces_of_four_corners_are_level(sizes: tuple[float, float]) -> None:
    close(step_row(*sizes, FEW), STEPS[sizes], WITHIN_OF_FEW)


@pytest.mark.long
@pytest.mark.parametrize("sizes", STEPS)
def test_faces_of_four_corners_are_level_by_many_draws(sizes: tuple[float, float]) -> None:
    close(step_row(*sizes, MANY), STEPS[sizes], WITHIN)


def test_two_corners_are_level_about_as_often_as_one_twice_over() -> None:
    # By hand: two thicknesses and the lining, 0.1 each, come to 0.173 at a corner; within 0.5.
    house = house_of([door(900.0, 2050.0)])
    (face,) = in_plane(house)
    lines = LineHouse(
        openings=(step_opening(face, house_budget(house)),), shared=(), draws=MANY, seed=SEED
    )
    found = ENGINE.tally(lines).openings[0].fits[0] / MANY
    one = 2.0 * NormalDist().cdf(0.5 / math.sqrt(0.03)) - 1.0
    assert found == pytest.approx(one**2, abs=0.002)


WHOLE_HOUSES = {
    # Saw scale and fence: mean chance, all fit, misfits.
    (0.10, 0.10): (0.786, 0.448, 5.3),
    (0.03, 0.03): (0.996, 0.930, 0.09),
    (0.20, 0.10): (0.483, 0.239, 12.9),
}


def sizes_of_a_house() -> list[tuple[float, float]]:
    """Five widths 450 to 2400 by five heights 600 to 1500."""
    return [
        (round(450.0 + 487.5 * i), round(600.0 + 225.0 * j)) for i in range(5) for j in range(5)
    ]


@pytest.mark.long
def test_a_batch_goes_right_or_wrong_as_a_batch() -> None:
    sizes = sizes_of_a_house()
    house = house_of([window(w, h, f"W{k + 1}") for k, (w, h) in enumerate(sizes)])
    faces = in_plane(house)
    for (scale_deg, fence_deg), (mean, all_fit, misfits) in WHOLE_HOUSES.items():
        budget = with_saw(house, scale_deg, fence_deg)
        tally = tallied((weighed_with(house, face, budget) for face in faces), MANY)
        each = [opening.fits[-1] / MANY for opening in tally.openings]
        # The sizes of the other house aren't known one by one.
        assert sum(each) / 25 == pytest.approx(mean, abs=WITHIN)
        assert tally.misfits[0] / MANY == pytest.approx(all_fit, abs=0.04)
        mean_misfits = sum(k * n for k, n in enumerate(tally.misfits)) / MANY
        assert mean_misfits == pytest.approx(misfits, abs=0.35)
        if scale_deg == 0.10:
            # As if each opening had a saw of its own.
            assert math.prod(each) == pytest.approx(0.002, abs=0.0015)
            # Nine houses in ten have no more misfits than this.
            assert sum(tally.misfits[:22]) < 0.9 * MANY <= sum(tally.misfits[:23])
