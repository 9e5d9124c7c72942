from dataclasses import replace

import pytest

from longpoint.forecast.season.advice import AdviceKind, SeasonPlan, season_advice
from longpoint.forecast.season.joint_opening import JointKind, Restraint
from longpoint.forecast.season.seasons import JointBoard, Season, SeasonJoint
from longpoint.forecast.season.species import EUROPEAN_REDWOOD, MDF, TIMBERS, species_of
from longpoint.quantities.length import Units

LEG = JointBoard(across_mm=70.0, species=EUROPEAN_REDWOOD)
BASE = JointBoard(across_mm=25.0, species=EUROPEAN_REDWOOD)
WINDOW = SeasonJoint(place="W1", boards=(LEG, LEG))
CORNER = SeasonJoint(place="R1", kind=JointKind.INTERNAL_MITRE, boards=(BASE, BASE))
OUTSIDE = SeasonJoint(
    place="R2", kind=JointKind.EXTERNAL_MITRE, corner_deg=270.0, boards=(BASE, BASE)
)
PLAN = SeasonPlan(
    joints=(WINDOW, CORNER, OUTSIDE),
    fitted_percent=11.0,
    driest=Season(name="heating on", humidity_percent=35.0),
    dampest=Season(name="late summer", humidity_percent=60.0),
)


def kinds(plan: SeasonPlan) -> list[AdviceKind]:
    return [advice.kind for advice in season_advice(plan, faces_mm=(57.0,))]


def test_the_greatest_effect_comes_first() -> None:
    said = season_advice(PLAN, faces_mm=(57.0, 45.0), species=TIMBERS)
    effects = [advice.before_mm - advice.after_mm for advice in said]
    assert effects == sorted(effects, reverse=True)
    assert {advice.kind for advice in said} == set(AdviceKind)


def test_no_advice_that_does_not_help() -> None:
    for fitted_percent in (6.0, 8.0, 9.0, 11.0, 13.0):
        plan = replace(PLAN, fitted_percent=fitted_percent)
        for advice in season_advice(plan, faces_mm=(45.0, 90.0), species=TIMBERS):
            assert round(advice.after_mm, 1) < round(advice.before_mm, 1), advice


def test_conditioned_timber_opens_both_ends_alike() -> None:
    (advice,) = (a for a in season_advice(PLAN) if a.kind is AdviceKind.CONDITION)
    # By hand: 35 and 60 % humidity at 20 degrees are 6.96 and 11.00 %, half-way 8.98 %.
    assert advice.words.startswith("Fitted at 9 % instead of 11 %: ")
    swing = (11.0 - 6.96) / 2.0
    assert advice.after_mm == pytest.approx(2**0.5 * 70.0 * 0.003 * swing * 0.75, rel=0.02)


def test_timber_at_the_middle_is_not_to_be_conditioned() -> None:
    assert AdviceKind.CONDITION not in kinds(replace(PLAN, fitted_percent=PLAN.middle_percent))


def test_what_is_glued_and_pinned_is_not_told_to_be() -> None:
    assert AdviceKind.GLUE_AND_PIN in kinds(PLAN)
    assert AdviceKind.GLUE_AND_PIN not in kinds(replace(PLAN, restraint=Restraint.STRONG))


def test_mdf_is_not_told_to_be_made_of_mdf() -> None:
    leg = replace(LEG, species=MDF)
    joint = replace(WINDOW, boards=(leg, leg))
    assert AdviceKind.STEADIER_TIMBER not in kinds(replace(PLAN, joints=(joint,)))


def test_a_livelier_timber_is_not_advised() -> None:
    beech = species_of("beech")
    assert beech is not None
    said = season_advice(PLAN, species=(beech,))
    assert AdviceKind.STEADIER_TIMBER not in [advice.kind for advice in said]


def test_a_wider_face_is_not_advised() -> None:
    said = season_advice(PLAN, faces_mm=(95.0, 70.0))
    assert AdviceKind.NARROWER_FACE not in [advice.kind for advice in said]


def test_a_scribe_is_advised_for_internal_corners_alone() -> None:
    (advice,) = (a for a in season_advice(PLAN) if a.kind is AdviceKind.SCRIBE)
    assert advice.places == ("R1",)
    assert AdviceKind.SCRIBE not in kinds(replace(PLAN, joints=(WINDOW, OUTSIDE)))


def test_a_narrower_face_leaves_the_skirting_alone() -> None:
    (advice,) = (
        a for a in season_advice(PLAN, faces_mm=(57.0,)) if a.kind is AdviceKind.NARROWER_FACE
    )
    assert advice.places == ("W1",)
    assert advice.after_mm / advice.before_mm == pytest.approx(57.0 / 70.0)


def test_what_opens_out_of_sight_needs_no_advice() -> None:
    assert season_advice(replace(PLAN, joints=(OUTSIDE,), restraint=Restraint.FREE)) == ()


def test_no_joints_no_advice() -> None:
    assert season_advice(replace(PLAN, joints=())) == ()


def test_the_words_carry_the_figures_in_the_units_of_the_house() -> None:
    for advice in season_advice(PLAN):
        assert f"{advice.before_mm:.1f}".removesuffix(".0") in advice.words
        assert advice.words.endswith(" mm.")
    assert all(a.words.endswith(" in.") for a in season_advice(PLAN, units=Units.INCH))
