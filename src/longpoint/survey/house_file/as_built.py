"""Read what was written down of a set once it was up; a bad part costs only itself."""

from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import joined, say
from longpoint.survey.as_built import AlongSide, AsBuilt, JointRead
from longpoint.survey.house_file.as_built_tables import AS_BUILT_TABLE, CORNERS
from longpoint.survey.house_file.entry import as_table, read_parts
from longpoint.survey.house_file.in_hand import InHand
from longpoint.survey.house_file.trouble import HouseFileTrouble
from longpoint.survey.openings import Layout
from longpoint.survey.per_side import PerSide

_NOTHING: Final[AlongSide] = (None, None, None)


def read_as_built(
    hand: InHand, values: dict[str, Any], layout: Layout, path: str
) -> AsBuilt | None:
    """Return a face's set as it went up; None when nothing was written down.

    Args:
        hand: The opening that is being read.
        values: The face's values; what stands under as_built is still as written.
        layout: Which pieces surround it, and so which mitres there are.
        path: "as_built." or "b.as_built.".
    """
    if "as_built" not in values:
        return None
    try:
        table = as_table(values["as_built"], path.rstrip("."))
    except HouseFileTrouble as trouble:
        _leave_out(hand, trouble)
        return None
    entry = read_parts(AS_BUILT_TABLE, table, hand.settings.remarks.units, path)
    for each in entry.troubles:
        _leave_out(hand, each)
    gaps, quirks, steps = (entry.values.get(key, {}) for key in ("gaps", "quirks", "steps"))
    _say_no_mitre(hand, layout, {*gaps, *steps}, path)
    bl, br, tr, tl = (_joint(gaps.get(corner, (None, None))) for corner in CORNERS)
    step_bl, step_br, step_tr, step_tl = (steps.get(corner) for corner in CORNERS)
    as_built = AsBuilt(
        gaps=(bl, br, tr, tl),
        quirks=PerSide(
            head=quirks.get("head", _NOTHING),
            right=quirks.get("right", _NOTHING),
            bottom=quirks.get("sill", _NOTHING),
            left=quirks.get("left", _NOTHING),
        ),
        steps_mm=(step_bl, step_br, step_tr, step_tl),
    )
    return None if as_built.says_nothing else as_built


def _joint(gap: tuple[float | None, float | None]) -> JointRead | None:
    heel_mm, toe_mm = gap
    if heel_mm is None and toe_mm is None:
        return None
    return JointRead(heel_mm=heel_mm, toe_mm=toe_mm)


def _leave_out(hand: InHand, trouble: HouseFileTrouble) -> None:
    hand.note(
        code="as-built-unreadable",
        read=trouble.read,
        wrong=say(
            "{wrong} That part is left out; no length hangs on it.",
            wrong=trouble.wrong,
        ),
        do=trouble.do,
        severity=Severity.WARNING,
    )


def _say_no_mitre(hand: InHand, layout: Layout, corners: set[str], path: str) -> None:
    without = [corner for corner in ("bl", "br") if corner in corners]
    if layout is Layout.ALL_ROUND or not without:
        return
    hand.note(
        code="key-unused",
        read=say(
            "{rstrip} tells of the joint at {without}.",
            rstrip=path.rstrip("."),
            without=joined(say(" and "), without),
        ),
        wrong=say(
            "With {layout} trim there is no mitre at the bottom, so nothing is learned from it.",
            layout=layout.value,
        ),
        do=say("Look whether it belongs to another corner, or take it out."),
    )
