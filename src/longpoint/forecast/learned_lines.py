"""What a crew learned of its saw and tape, as lines of the budget that its forecasts rest on."""

import math
from typing import Final

from longpoint.forecast.budget.records import BudgetLine, Cause, ErrorName, Standing
from longpoint.forecast.learning.setup import Learned, Term
from longpoint.forecast.learning.setup_key import AngleKey, SizeKey
from longpoint.speech.said import say
from longpoint.survey.house import House
from longpoint.survey.instruments import Saw

STOP_DEG: Final = 45.0

DEFAULT_SIZE_U_MM: Final = math.hypot(0.20, 0.20)
"""What reading and marking are out by together, always alike, before anything is learned."""


def learned_lines(learned: Learned, house: House) -> tuple[BudgetLine, ...]:
    """Return the lines that a crew's own figures put in the place of ours.

    Args:
        learned: What its finished work said.
        house: Its saw, with blade, setting and what is dialled out; its tapes.

    Returns:
        Of the saw, once a frame told of it as it is set up now. Of the size, once it is known
        better than our figure or is surely not nothing, where one tape read all openings: reading
        and marking can't be told apart, so the line of the reading holds both.
    """
    return (*_saw_lines(learned, house.saw), *_size_lines(learned, house))


def dialled_out_deg(saw: Saw) -> float:
    """Return how much of the saw's error the sheets take out, mean of both swings.

    Example:
        >>> saw = Saw(name="S1", found_left_deg=45.1, found_right_deg=45.14)
        >>> round(dialled_out_deg(saw), 3)
        0.12
    """
    if saw.found_left_deg is None or saw.found_right_deg is None:
        return 0.0
    return (saw.found_left_deg + saw.found_right_deg) / 2.0 - STOP_DEG


def _saw_lines(learned: Learned, saw: Saw) -> tuple[BudgetLine, ...]:
    term = learned.term(AngleKey(saw=saw.name, setting=saw.setting, blade=saw.blade))
    if term is None or not term.seen:
        return ()
    belief = term.belief
    line = BudgetLine(
        name=ErrorName.SAW_SCALE,
        cause=Cause.SAW,
        # The next house is one more draw of the saw, not its mean.
        u=math.hypot(belief.mean_u, belief.spread),
        unit="deg",
        is_shared=True,
        bias=belief.mean - dialled_out_deg(saw),
        standing=Standing.LEARNED,
        basis=frames_words(term),
    )
    return (line,)


def _size_lines(learned: Learned, house: House) -> tuple[BudgetLine, ...]:
    names = {o.readings.tape for o in house.openings}
    names |= {o.readings_b.tape for o in house.openings if o.readings_b is not None}
    if len(names) != 1:
        return ()
    tape = house.tape(names.pop())
    term = learned.term(SizeKey(tape=tape.name))
    if term is None or not _is_worth(term):
        return ()
    reading = BudgetLine(
        name=ErrorName.INSIDE_READING,
        cause=Cause.TAPE,
        # Frames differ by single readings and marks as well, which have lines of their own.
        u=term.belief.mean_u,
        unit="mm",
        is_shared=True,
        bias=term.belief.mean - tape.take_off_mm,
        standing=Standing.LEARNED,
        basis=frames_words(term),
    )
    mark = BudgetLine(
        name=ErrorName.MARK_OFFSET,
        cause=Cause.MARKS,
        u=0.0,
        unit="mm",
        is_shared=True,
        standing=Standing.LEARNED,
        basis=say("{frames}, in the line of the inside reading", frames=frames_words(term)),
    )
    return (reading, mark)


def _is_worth(term: Term) -> bool:
    if not term.seen:
        return False
    within = term.belief.mean_within()
    is_sure = within.lowest > 0.0 or within.highest < 0.0
    return is_sure or term.belief.mean_u < DEFAULT_SIZE_U_MM


def frames_words(term: Term) -> str:
    """Return from how much a figure was learned.

    Example:
        >>> from longpoint.forecast.learning.belief import Prior
        >>> from longpoint.forecast.learning.setup import Seen
        >>> term = Term(key=AngleKey(saw="S1"), prior=Prior(mean_sd=0.1, spread=0.02))
        >>> frames_words(term.with_seen(Seen(mark="W1", value=0.1)))
        'from 1 frame'
    """
    return (
        say("from 1 frame")
        if term.frames == 1
        else say(
            "from {frames} frames",
            frames=term.frames,
        )
    )
