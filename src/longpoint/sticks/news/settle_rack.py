"""The rack after a house is cut: what was used is gone, what is worth keeping has a label."""

from dataclasses import dataclass
from datetime import date

from longpoint.speech.said import say
from longpoint.sticks.news.kept_offcuts import AfterCutting, KeptOffcut
from longpoint.survey.house import House
from longpoint.survey.rack import Gone, Out, Rack, RackPiece


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """What came of settling a house.

    Attributes:
        rack: The rack afterwards.
        put_up: Offcuts that got a label.
        taken: Labels taken out.
        known: Labels of offcuts of this house that were put up before.
        elsewhere: Labels of this house's plan that were gone before, for something else.
        strange: Labels that the rack doesn't know.
        too_short: How many offcuts are too short to keep.
    """

    rack: Rack
    put_up: tuple[RackPiece, ...] = ()
    taken: tuple[str, ...] = ()
    known: tuple[str, ...] = ()
    elsewhere: tuple[str, ...] = ()
    strange: tuple[str, ...] = ()
    too_short: int = 0


def settled(rack: Rack, after: AfterCutting, house: House, code: str, today: date) -> Settled:
    """Return the rack after a house; settling the same house again changes nothing.

    Args:
        rack: The rack before.
        after: What the house leaves.
        house: The house: its name, profiles and the least length its saw keeps.
        code: Code of its readings.
        today: The day to write down.

    Raises:
        SurveyError: There is no label left.
    """
    rack, taken, elsewhere, strange = _taken_out(rack, after, house, today)
    origins = {piece.origin: piece.label for piece in rack.pieces if piece.origin}
    put_up, known, too_short = [], [], 0
    for kept in after.kept:
        origin = say("{code} {origin}", code=code, origin=kept.origin)
        if origin in origins:
            known.append(origins[origin])
            continue
        rack, key = rack.with_section(house.profile(kept.profile))
        least_mm = rack.section(key).least_mm
        if kept.length_mm < (house.saw.keep_mm if least_mm is None else least_mm):
            too_short += 1
            continue
        rack, piece = rack.with_piece(_piece(kept, key, origin, house, today))
        put_up.append(piece)
    return Settled(
        rack=rack,
        put_up=tuple(put_up),
        taken=taken,
        known=tuple(known),
        elsewhere=elsewhere,
        strange=strange,
        too_short=too_short,
    )


def _taken_out(
    rack: Rack, after: AfterCutting, house: House, today: date
) -> tuple[Rack, tuple[str, ...], tuple[str, ...], tuple[str, ...]]:
    labels = {piece.label: piece for piece in rack.pieces}
    taken, elsewhere, strange = [], [], []
    wanted = [(each, Out.USED) for each in after.used]
    wanted += [(each, Out.MISSING) for each in after.missing]
    for name, why in wanted:
        piece = labels.get(name)
        if piece is None:
            strange.append(name)
        elif piece.gone is None:
            rack = rack.without(name, Gone(why=why, on=today, house=house.name))
            taken.append(name)
        elif piece.gone.house != house.name:
            elsewhere.append(name)
    return rack, tuple(taken), tuple(elsewhere), tuple(strange)


def _piece(kept: KeptOffcut, key: str, origin: str, house: House, today: date) -> RackPiece:
    return RackPiece(
        label="",
        section=key,
        length_mm=round(kept.length_mm, 2),
        left=kept.left,
        right=kept.right,
        house=house.name,
        origin=origin,
        put_up=today,
    )
