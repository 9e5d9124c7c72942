"""Sentences on what saves a piece: the rest of a spoiled one, a stick's end, an offcut."""

from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece
from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.speech.said import joined, say, say_many
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.plan_again import PlannedAgain, moved_pieces
from longpoint.sticks.news.remains import seat_in
from longpoint.sticks.plan import Laid, StickSource


def saving_lines(plan: HousePlan, before: AtTheSaw, again: PlannedAgain) -> tuple[str, ...]:
    """Return a sentence for each stick that saves new timber.

    Rests of spoiled pieces come first, then offcuts to fetch, then sticks with room for what has to
    be cut again. What only changed its stick is told elsewhere.

    Args:
        plan: The house as planned.
        before: The state before anything was told.
        again: The rest, planned again.
    """
    moved = set(moved_pieces(before, again.state))
    by_mark = {piece.mark: piece for piece in plan.pieces}
    known = {stick.name: stick for stick in before.sticks}
    found: list[tuple[int, str]] = []
    for stick in again.state.sticks:
        marks = [laid for laid in stick.next if laid.piece in moved]
        if not marks or stick.name in again.new:
            continue
        if stick.rest is not None:
            found.append((0, _from_rest(plan, stick, by_mark)))
        elif stick.name in again.fetched:
            found.append((1, _from_rack(plan, stick, marks)))
        elif lost := [laid for laid in marks if laid.piece in again.placed]:
            found.append((2, _from_stick(plan, stick, lost, known.get(stick.name))))
    return tuple(text for _, text in sorted(found, key=lambda pair: pair[0]))


def source_words(stick: StickAtSaw) -> str:
    """Return what a stick is, where it isn't one of the stock list; else nothing."""
    if stick.rest is not None:
        return say("left of {of}, spoiled", of=stick.rest.of)
    if stick.source is StickSource.OFFCUT:
        return (
            say("rack piece {label}", label=stick.label)
            if stick.label
            else say("offcut from the rack")
        )
    return ""


def _from_rest(plan: HousePlan, stick: StickAtSaw, by_mark: dict[str, Piece]) -> str:
    rest, (first, *others) = stick.rest, stick.next
    assert rest is not None
    units = plan.house.units
    longer_mm = rest.length_mm - (first.end_mm - first.start_mm)
    said = say(
        "{of} (spoiled, {length} left of it): ",
        of=rest.of,
        length=format_with_unit(rest.length_mm, units),
    )
    said += say("cut {piece} from it: ", piece=first.piece)
    said += (
        say("it is {longer} longer.", longer=format_length(longer_mm, units))
        if format_length(longer_mm, units) != "0"
        else say("it is as long.")
    )
    if others:
        said += say(" Behind it {listed}.", listed=_listed([laid.piece for laid in others]))
    return said + _kept_end(plan, stick, by_mark[first.piece], first)


def _kept_end(plan: HousePlan, stick: StickAtSaw, piece: Piece, laid: Laid) -> str:
    can_turn = plan.house.profile(stick.profile).reversible
    if stick.rest is None or stick.is_begun:
        return ""
    seat = seat_in(stick.rest, piece, plan.house.saw.kerf_mm, can_turn=can_turn)
    if seat is None or seat.laid != laid:
        return ""
    ends = {
        (True, True): say("Both its ends stay as they are cut."),
        (True, False): say("Its left end stays as it is cut."),
        (False, True): say("Its right end stays as it is cut."),
        (False, False): "",
    }
    said = ends[seat.keeps_left, seat.keeps_right]
    return say(" {said}", said=said) if said else ""


def _from_rack(plan: HousePlan, stick: StickAtSaw, laid: list[Laid]) -> str:
    length = format_with_unit(stick.length_mm, plan.house.units)
    name = (
        say("rack piece {label}", label=stick.label)
        if stick.label
        else say("an offcut from the rack")
    )
    return say(
        "Fetch {name}, {profile} {length}: cut {cut} from it.",
        name=name,
        profile=stick.profile,
        length=length,
        cut=_cut(laid),
    )


def _from_stick(
    plan: HousePlan, stick: StickAtSaw, laid: list[Laid], before: StickAtSaw | None
) -> str:
    units = plan.house.units
    what = source_words(stick)
    name = say("{stick} ({what})", stick=stick.name, what=what) if what else stick.name
    if not stick.is_begun and (before is None or not before.next):
        return say("{name} lies there unused: cut {cut} from it.", name=name, cut=_cut(laid))
    ahead = [each.piece for each in (*stick.done, *stick.next) if each.start_mm < laid[0].start_mm]
    behind = say(" behind {ahead}", ahead=ahead[-1]) if ahead else ""
    end_mm = max(each.end_mm for each in stick.next)
    left = format_with_unit(max(0.0, stick.length_mm - end_mm), units)
    return say(
        "{name} has room{behind}: cut {cut} from it; {left} are left then.",
        name=name,
        behind=behind,
        cut=_cut(laid),
        left=left,
    )


def _cut(laid: list[Laid]) -> str:
    marks = [each.piece for each in laid]
    return (
        marks[0]
        if len(marks) == 1
        else say(
            "{counted} ({listed})",
            counted=say_many("{count} piece", "{count} pieces", count=len(marks)),
            listed=_listed(marks),
        )
    )


def _listed(marks: list[str]) -> str:
    return (
        marks[0]
        if len(marks) == 1
        else say(
            "{marks} and {marks_2}",
            marks=joined(", ", marks[:-1]),
            marks_2=marks[-1],
        )
    )
