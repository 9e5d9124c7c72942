"""The sheet of a street: how far each house came, and what all of them take."""

from collections.abc import Iterable, Sequence
from typing import Final

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.sheets.blocks import Block, Cell, Column, Heading, Note, Paragraph, Sheet, Table
from longpoint.sheets.cautions import common_cautions
from longpoint.sheets.joint_blocks import bought_words, cost_words, joint_blocks
from longpoint.sheets.street_rows import (
    HouseRow,
    HouseState,
    ProfileRow,
    profile_totals,
    street_units,
)
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.joint_buying import Joint

_WORDS: Final = {
    HouseState.READY: say("ready"),
    HouseState.HELD: say("! HELD"),
    HouseState.REFUSED: say("x REFUSED"),
}
_HOUSES: Final = (
    Column(title=say("House"), share=3.2),
    Column(title=say("State"), share=1.6),
    Column(title=say("Pieces"), is_number=True, share=1.1),
    Column(title=say("New sticks"), is_number=True, share=1.2),
    Column(title=say("Cost"), is_number=True, share=1.6),
    Column(title=say("At least"), is_number=True, share=1.6),
    Column(title=say("All fit"), is_number=True, share=1.1),
)
_TOTALS: Final = (
    Column(title=say("Profile"), share=2.4),
    Column(title=say("Pieces"), is_number=True, share=1.1),
    Column(title=say("To buy"), share=3.2),
    Column(title=say("Cost"), is_number=True, share=1.6),
    Column(title=say("At least"), is_number=True, share=1.6),
)


def street_sheet(
    name: str, code: str, houses: Sequence[HouseRow], joint: Sequence[Joint] = ()
) -> Sheet:
    """Return the sheet of a street.

    Args:
        name: The street's name.
        code: Code of all that was planned.
        houses: Its houses, in their order.
        joint: What buying together comes to, delivery by delivery.
    """
    units = street_units(houses)
    unit = say("mm") if units is Units.MM else say("inches")
    return Sheet(
        name="street",
        title=say("Street"),
        house=name,
        readings_code=code,
        subtitle=say(
            "Lengths in {unit}. Every house has sheets of its own, in the folder named here.",
            unit=unit,
        ),
        blocks=(
            *_states(houses),
            *_refused(houses),
            *_totals(houses),
            *joint_blocks(joint, units),
        ),
        cautions=common_cautions(),
    )


def said_of(row: HouseRow) -> str:
    """Return one line that says how far a house came.

    Example:
        >>> said_of(HouseRow(file="a.toml", folder="a", state=HouseState.READY, pieces=24))
        'a: ready, 24 pieces'
    """
    match row.state:
        case HouseState.READY:
            return say(
                "{folder}: ready, {counted}",
                folder=row.folder,
                counted=say_many("{count} piece", "{count} pieces", count=row.pieces),
            )
        case HouseState.HELD:
            return say(
                "{folder}: held back: {held}; {counted}",
                folder=row.folder,
                held=joined(", ", row.held),
                counted=say_many("{count} piece", "{count} pieces", count=row.pieces),
            )
        case HouseState.REFUSED:
            return say(
                "{folder}: refused. {refusal}",
                folder=row.folder,
                refusal=joined(" ", row.refusal),
            )


def states_said(houses: Iterable[HouseRow]) -> str:
    """Return how many houses came how far, in one sentence.

    Example:
        >>> ready = HouseRow(file="a.toml", folder="a", state=HouseState.READY)
        >>> states_said([ready, ready])
        '2 houses: 2 ready, 0 with places held back, 0 refused.'
    """
    states = [row.state for row in houses]
    return say(
        "{counted}: {count} ready, {count_2} with places held back, {count_3} refused.",
        counted=say_many("{count} house", "{count} houses", count=len(states)),
        count=states.count(HouseState.READY),
        count_2=states.count(HouseState.HELD),
        count_3=states.count(HouseState.REFUSED),
    )


def _states(houses: Sequence[HouseRow]) -> tuple[Block, ...]:
    return (
        Paragraph(text=states_said(houses)),
        Table(
            columns=_HOUSES,
            rows=tuple(_row(row) for row in houses),
            under=tuple(
                (number, say("Held back: {held}", held=joined(", ", row.held)))
                for number, row in enumerate(houses)
                if row.held
            ),
            under_is_said=True,
        ),
        Paragraph(
            text=say(
                "Cost is that of the new sticks, without spares: a price where "
                "every stick has one, else metres. No plan of that house by "
                "itself costs less than what stands under at least. All fit is "
                "the forecast's chance that every opening of the house fits: a "
                "model's. Houses of one saw and one tape go right or wrong "
                "together, so these chances are not to be multiplied."
            ),
            is_small=True,
        ),
    )


def _row(row: HouseRow) -> tuple[str | Cell, ...]:
    name = Cell(text=row.folder, small=(row.house,) if row.house else (row.file,))
    state = Cell(text=_WORDS[row.state])
    if row.state is HouseState.REFUSED:
        return (name, state, "-", "-", "-", "-", "-")
    return (
        name,
        state,
        say("{pieces}", pieces=row.pieces),
        say("{profiles}", profiles=sum(each.sticks for each in row.profiles)),
        _sums((each.cost, each.unit) for each in row.profiles),
        _sums((each.lower_bound, each.unit) for each in row.profiles),
        "-" if row.all_fit is None else say("{all_fit:.2f}", all_fit=row.all_fit),
    )


def _sums(sums: Iterable[tuple[float, str]]) -> str:
    by_unit: dict[str, float] = {}
    for value, unit in sums:
        by_unit[unit] = by_unit.get(unit, 0.0) + value
    return (
        joined(" + ", (cost_words(value, unit) for unit, value in sorted(by_unit.items()))) or "-"
    )


def _refused(houses: Sequence[HouseRow]) -> tuple[Block, ...]:
    notes = tuple(
        Note(severity=Severity.STOP, title=row.file, text=joined(" ", row.refusal))
        for row in houses
        if row.state is HouseState.REFUSED
    )
    return (Heading(text=say("Refused")), *notes) if notes else ()


def _totals(houses: Sequence[HouseRow]) -> tuple[Block, ...]:
    totals = profile_totals(houses)
    if not totals:
        return ()
    return (
        Heading(text=say("What all houses take, each planned by itself")),
        Table(columns=_TOTALS, rows=tuple(_total(row, street_units(houses)) for row in totals)),
    )


def _total(row: ProfileRow, units: Units) -> tuple[str | Cell, ...]:
    racks = (
        (
            say(
                "and {counted} from racks",
                counted=say_many("{count} offcut", "{count} offcuts", count=row.offcuts),
            ),
        )
        if row.offcuts
        else ()
    )
    return (
        Cell(
            text=row.profile,
            small=(
                say(
                    "{counted}, {proved} proved",
                    counted=say_many("{count} house", "{count} houses", count=row.houses),
                    proved=row.proved,
                ),
            ),
        ),
        say("{pieces}", pieces=row.pieces),
        Cell(text=bought_words(row.buys, units), small=racks),
        cost_words(row.cost, row.unit),
        cost_words(row.lower_bound, row.unit),
    )
