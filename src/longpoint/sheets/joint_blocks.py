"""What buying for several houses together saves, as blocks of the street's sheet."""

from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Paragraph, Table
from longpoint.sheets.street_rows import longest_first
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.joint_buying import Joint
from longpoint.sticks.plan import CutStick

_COLUMNS: Final = (
    Column(title=say("Profile and houses"), share=3.0),
    Column(title=say("Each by itself"), share=2.6),
    Column(title=say("Together"), share=2.6),
    Column(title=say("Saves"), is_number=True, share=1.3),
    Column(title=say("At least"), is_number=True, share=1.5),
)
_STICKS: Final = (
    Column(title=say("Stick"), share=1.2),
    Column(title=say("Length"), is_number=True, share=1.0),
    Column(title=say("Pieces from left to right"), share=6.0),
)


def joint_blocks(joint: Sequence[Joint], units: Units) -> tuple[Block, ...]:
    """Return what stands on the street's sheet of buying together.

    Args:
        joint: What it comes to, delivery by delivery; none: nothing is said.
        units: Unit of the sheet.
    """
    if not joint:
        return ()
    return (
        Heading(text=say("Bought together")),
        Table(
            columns=_COLUMNS,
            rows=tuple(_row(each, units) for each in joint),
            under=tuple((n, _why(each)) for n, each in enumerate(joint) if not each.sticks),
            under_is_said=True,
        ),
        Paragraph(
            text=say(
                "Saved only where these houses are cut together, stick by stick "
                "as listed below; the sheets of each house are for its own "
                "sticks. Without spares. Offcuts named in the house files are "
                "taken as different ones in each house. No plan for these houses "
                "together costs less than what stands under at least. Houses are "
                "put together in the order of their names, as many as are "
                "searched in good time."
            ),
            is_small=True,
        ),
        *(block for n, each in enumerate(joint, 1) for block in _sticks(each, n, units)),
    )


def saved_lines(joint: Iterable[Joint]) -> tuple[str, ...]:
    """Return one line for the screen on each delivery."""
    return tuple(
        say(
            "{profile} for {counted} together: ",
            profile=each.profile,
            counted=say_many("{count} house", "{count} houses", count=len(each.names)),
        )
        + (
            say("saves {saves}.", saves=cost_words(each.saves, each.unit))
            if each.sticks
            else _why(each)
        )
        for each in joint
    )


def bought_words(buys: Iterable[tuple[float, int]], units: Units = Units.MM) -> str:
    """Return how many sticks of which length.

    Example:
        >>> bought_words([(5400.0, 3), (4200.0, 1)])
        '3 of 5400, 1 of 4200'
    """
    each = (
        say("{count} of {length}", count=count, length=format_length(length_mm, units))
        for length_mm, count in buys
    )
    return joined(", ", each) or say("nothing")


def cost_words(cost: float, unit: str) -> str:
    """Return a sum in its unit: metres are named, prices stand as the house files give them.

    Example:
        >>> cost_words(21.6, "m"), cost_words(21.6, "price")
        ('21.60 m', '21.60')
    """
    return say("{cost:.2f} m", cost=cost) if unit == "m" else say("{cost:.2f}", cost=cost)


def _row(joint: Joint, units: Units) -> tuple[str | Cell, ...]:
    first, last = joint.names[0], joint.names[-1]
    houses = say(
        "{counted}, {first} to {last}",
        counted=say_many("{count} house", "{count} houses", count=len(joint.names)),
        first=first,
        last=last,
    )
    proved = (say("proved"),) if joint.is_proved else ()
    bound = "-" if joint.left_out else cost_words(joint.lower_bound, joint.unit)
    return (
        Cell(
            text=joint.profile,
            small=(houses, say_many("{count} piece", "{count} pieces", count=joint.pieces)),
        ),
        _bought(joint.apart, joint.unit, bought_words(longest_first(joint.buys_apart), units)),
        _bought(joint.together, joint.unit, bought_words(longest_first(joint.buys), units))
        if joint.sticks
        else say("as before"),
        cost_words(joint.saves, joint.unit),
        Cell(text=bound, small=proved),
    )


def _bought(cost: float, unit: str, sticks: str) -> Cell:
    return Cell(text=cost_words(cost, unit), small=(sticks,))


def _why(joint: Joint) -> str:
    if joint.left_out:
        return say("Not compared, since {left_out}.", left_out=joint.left_out)
    if joint.is_proved:
        return say("Nothing can be saved: no plan for them together costs less.")
    return say("No plan was found that costs less than each by itself.")


def _sticks(joint: Joint, number: int, units: Units) -> tuple[Block, ...]:
    if not joint.sticks:
        return ()
    return (
        Heading(
            text=say(
                "Delivery {number}: {profile}, cut together",
                number=number,
                profile=joint.profile,
            ),
            level=3,
        ),
        Table(
            columns=_STICKS,
            rows=tuple(_stick(stick, units) for stick in joint.sticks),
            is_close=True,
        ),
    )


def _stick(stick: CutStick, units: Units) -> tuple[str | Cell, ...]:
    laid = (
        say("{piece} (turned)", piece=each.piece) if each.turned else each.piece
        for each in stick.laid
    )
    label = (
        (say("offcut {label}", label=stick.label).strip(),)
        if stick.source.value == "offcut"
        else ()
    )
    return (
        Cell(text=stick.name, small=label),
        format_length(stick.length_mm, units),
        joined(", ", laid),
    )
