"""The plan as a document for other programs; its keys are fixed, its figures in hundredths."""

import math
from typing import Any, Final

from longpoint.catalogue.plan_trims import PlannedTrim
from longpoint.errors import Finding
from longpoint.forecast.records import Chances, HouseForecast
from longpoint.house_plan import HousePlan, Spares
from longpoint.pieces.piece import EndCut, Piece
from longpoint.shape.fitted import FittedOpening
from longpoint.sheets.blocks import SheetState
from longpoint.sheets.outlook_words import verdicts, worse_face
from longpoint.sticks.plan import CutStick, Laid, Proof, Reached
from longpoint.sticks.spare_sticks import SpareSticks
from longpoint.survey.house import EntryKind

PLAN_FORMAT: Final = "longpoint-plan/1"
HOLD: Final = "hold"
SUREST: Final = 0.99
"""No chance is written higher: it is only a model's."""

Document = dict[str, Any]


def plan_document(plan: HousePlan, state: SheetState = SheetState.CURRENT) -> Document:
    """Return the plan as plain values, ready for JSON.

    Lengths are in mm and angles in degrees whatever the house was read in, rounded to hundredths;
    so are chances, none above 0.99.

    Args:
        plan: The planned house.
        state: Stale when the readings have changed since; no program should cut from it then.
    """
    return {
        "format": PLAN_FORMAT,
        "house": plan.house.name,
        "readings_code": plan.readings_code,
        "cut_code": plan.cut_plan.code,
        "state": state.value,
        "pieces": [_piece(piece) for piece in plan.pieces],
        "sticks": [stick_document(stick) for stick in plan.cut_plan.sticks],
        "proof": [_proof(proof) for proof in plan.cut_plan.proofs],
        "goals": [_reached(reached) for reached in plan.cut_plan.reached],
        "spares": [_spare(spare, plan.spares) for spare in plan.spares.sticks],
        "openings": _openings(plan),
        "trims": [_trim(trim) for trim in plan.trims],
        "forecast": _forecast(plan),
        "findings": [_finding(finding) for finding in plan.findings],
    }


def _hundredths(value: float) -> float:
    return round(value, 2) + 0.0


def _maybe(value: float | None) -> float | None:
    return None if value is None else _hundredths(value)


def _piece(piece: Piece) -> Document:
    return {
        "mark": piece.mark,
        "opening": piece.opening,
        "run": piece.run,
        "trim": piece.trim,
        "room": piece.room,
        "face": piece.face,
        "role": piece.role.value,
        "profile": piece.profile,
        "method": piece.method.value if piece.method else None,
        "inner_mm": _hundredths(piece.inner_mm),
        "outer_mm": _hundredths(piece.outer_mm),
        "short_mm": _hundredths(piece.short_mm),
        "long_mm": _hundredths(piece.long_mm),
        "back_mm": _hundredths(piece.back_mm),
        "hook_mm": _maybe(piece.hook_mm),
        "hook_from": piece.hook_from.value if piece.hook_from else None,
        "left": _end(piece.left),
        "right": _end(piece.right),
        "u_mm": _hundredths(piece.u_mm),
        "hand_sum": piece.hand_sum,
        "notes": list(piece.notes),
    }


def _end(cut: EndCut) -> Document:
    return {
        "cut": cut.kind.value,
        "mitre_deg": _hundredths(cut.mitre_deg),
        "bevel_deg": _hundredths(cut.bevel_deg),
    }


def stick_document(stick: CutStick) -> Document:
    """Return a stick as plain values, lengths rounded to hundredths."""
    return {
        "name": stick.name,
        "profile": stick.profile,
        "length_mm": _hundredths(stick.length_mm),
        "source": stick.source.value,
        "pieces": [laid.piece for laid in stick.laid],
        "laid": [_laid(laid) for laid in stick.laid],
        "used_mm": _hundredths(stick.used_mm),
        "left_mm": _hundredths(stick.left_mm),
        "label": stick.label or None,
    }


def _laid(laid: Laid) -> Document:
    return {
        "piece": laid.piece,
        "turned": laid.turned,
        "start_mm": _hundredths(laid.start_mm),
        "end_mm": _hundredths(laid.end_mm),
    }


def _proof(proof: Proof) -> Document:
    return {
        "profile": proof.profile,
        "cost": _hundredths(proof.cost),
        "lower_bound": _hundredths(proof.lower_bound),
        "optimal": proof.optimal,
        "unit": proof.unit,
        "solver": proof.solver,
    }


def _reached(reached: Reached) -> Document:
    return {
        "goal": reached.goal.value,
        "profile": reached.profile or None,
        "value": _hundredths(reached.value),
        "limit": _hundredths(reached.limit),
        "proved": reached.is_proved,
    }


def _spare(spare: SpareSticks, spares: Spares) -> Document:
    count = spares.count_of(spare.profile)
    return {
        "profile": spare.profile,
        "cut_again_p90": count.p90 if count else 0,
        "sets_forecast": count.sets if count else 0,
        "covered": list(spare.covered),
        "buy": [
            {"length_mm": _hundredths(length_mm), "count": number}
            for length_mm, number in spare.buy
        ],
        "rests_of": list(spare.rests),
        "rack_mm": [_hundredths(length_mm) for _, length_mm in spare.rack],
        "missing": spare.missing,
    }


def _openings(plan: HousePlan) -> list[Document]:
    shapes: dict[str, FittedOpening] = {}
    for shape in plan.shapes.openings:
        shapes.setdefault(shape.mark, shape)
    found = verdicts(plan)
    entries: list[Document] = []
    for opening in plan.house.openings:
        verdict = found.get(opening.mark)
        fitted = shapes.get(opening.mark)
        corners = None if fitted is None else [_hundredths(angle) for angle in fitted.corner_deg]
        entries.append(
            {
                "mark": opening.mark,
                "room": opening.room,
                "kind": opening.kind.value,
                "verdict": verdict.value if verdict else None,
                **_outlook(plan, opening.mark),
                "method": opening.method.value,
                "corners_deg": corners,
            }
        )
    entries += [
        {
            "mark": entry.mark,
            "room": entry.room,
            "kind": None,
            "verdict": HOLD,
            **_outlook(plan, entry.mark),
            "method": None,
            "corners_deg": None,
        }
        for entry in plan.house.held
        if entry.kind is EntryKind.OPENING
    ]
    return entries


def _trim(trim: PlannedTrim) -> Document:
    return {
        "mark": trim.entry.mark,
        "kind": trim.entry.kind,
        "room": trim.entry.room,
        "openings": list(trim.entry.openings),
        "lines": list(trim.plan.lines),
    }


def _outlook(plan: HousePlan, mark: str) -> Document:
    """Return the forecast of an opening, that of its worse face; nulls where there is none."""
    advice = plan.outlook.advice_on(mark) if plan.outlook else None
    face = worse_face(plan, mark)
    if mark in plan.held or advice is None or advice.chance is None or face is None:
        return {"p_close": None, "chances": None, "why": None, "main_cause": None}
    return {
        "p_close": _chance(advice.chance),
        "chances": _chances(face.chances),
        "why": advice.why,
        "main_cause": face.causes[0].cause.value if face.causes else None,
    }


def _chances(chances: Chances) -> Document:
    return {
        "gaps": _chance(chances.gaps),
        "quirk": _chance(chances.quirk),
        "fits": _chance(chances.fits),
        "faces": _chance(chances.faces),
        "all": _chance(chances.all),
        "first_order": _chance(chances.first_order),
    }


def _chance(value: float) -> float:
    # Full hundredths, as on the sheets: never rounded up to what is wanted.
    return min(SUREST, math.floor(100.0 * value + 1e-9) / 100.0)


def _forecast(plan: HousePlan) -> Document | None:
    if plan.outlook is None:
        return None
    forecast, proved = plan.outlook.forecast, plan.outlook.if_proved
    return {
        **_house_chances(forecast),
        "if_proved": _house_chances(proved) if proved else None,
        "model": True,
    }


def _house_chances(forecast: HouseForecast) -> Document:
    return {
        "all_fit": _chance(forecast.all_fit),
        "misfits_mean": _hundredths(forecast.misfits_mean),
        "misfits_p90": forecast.misfits_p90,
        "draws": forecast.draws,
        "seed": forecast.seed,
    }


def _finding(finding: Finding) -> Document:
    return {
        "code": finding.code,
        "severity": finding.severity.value,
        "place": finding.place,
        "read": finding.read,
        "wrong": finding.wrong,
        "do": finding.do,
    }
