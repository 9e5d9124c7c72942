"""What the plan saves against any plan by long points, in words."""

import math
from typing import Final

from longpoint.quantities.formatting import running_length
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import joined, say
from longpoint.sticks.plan import CutPlan, Saved

_EXACT: Final = 1e-6
"""What a sum of prices or metres may be off by as a binary fraction."""


def saved_sentences(plan: CutPlan, units: Units) -> tuple[str, ...]:
    """Return a sentence for each profile that is planned; where nothing is saved, one for several.

    No profile is left out. Rounded down, so that no more is said than is proved.
    """
    known = {saved.profile: saved for saved in plan.savings}
    profiles: dict[tuple[str, str], list[str]] = {}
    for proof in plan.proofs:
        saved = known.get(proof.profile)
        alone = proof.profile if saved and saved.at_least else ""
        profiles.setdefault((_sentence(saved, units), alone), []).append(proof.profile)
    return tuple(
        say("{names}: {said}", names=joined(", ", names), said=said)
        for (said, _), names in profiles.items()
    )


def _sentence(saved: Saved | None, units: Units) -> str:
    if saved is None:
        return say("none proved; it wasn't worked out for this plan.")
    if not saved.can_turn:
        return say("none promised, since pieces can't be turned end for end to share a mitre.")
    amount = _amount(saved, units)
    if amount is None:
        return say("none proved.")
    return say("at least {amount} less than any plan by long points.", amount=amount)


def _amount(saved: Saved, units: Units) -> str | None:
    """What is saved, rounded down to what is printed; None where that is nothing."""
    if saved.unit == "price":
        hundredths = math.floor(saved.at_least * 100.0 + _EXACT)
        return say("{hundredths:.2f}", hundredths=hundredths / 100.0) if hundredths else None
    step_mm = 1.2 * MM_PER_INCH if units is Units.INCH else 100.0
    steps = math.floor(saved.at_least * 1000.0 / step_mm + _EXACT)
    return running_length(steps * step_mm, units) if steps else None
