"""Where the cutting stands: each stick as it lies, what came off it, and what went wrong.

A plan is cut stick by stick, from the left end of each. What happens is told as news; each piece
of news gives a new state, in which a piece that was cut never moves, and what no longer has a
place is loose until the rest is planned again (`plan_again`).
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from longpoint.errors import StockError
from longpoint.speech.said import say
from longpoint.sticks.laid_code import Row, laid_code
from longpoint.sticks.news.remains import Remains
from longpoint.sticks.news.saw_news import BadZone, Cut, Fits, Lost, News, Spoiled, StickRead
from longpoint.sticks.plan import CutPlan, Laid, StickSource


@dataclass(frozen=True, slots=True, kw_only=True)
class StickAtSaw:
    """One stick as it lies.

    Attributes:
        name: Its name.
        profile: Name of its profile.
        length_mm: Its length, as measured where it was.
        source: New stock, or an offcut or the rest of a spoiled piece.
        done: Pieces that came off it and are good, from the left end.
        next: Pieces that are to come off it, from left to right.
        spent_mm: From its left end to the right point of the last piece cut, good or not.
        bad: (from, to) of what can't be used, from the left end. [mm]
        label: What is written on an offcut from the rack; empty where it has none.
        listed_mm: Its length in the stock list where it was read otherwise; 0: as `length_mm`.
        rest: What it is, where it is left of a spoiled piece.
    """

    name: str
    profile: str
    length_mm: float
    source: StickSource
    done: tuple[Laid, ...] = ()
    next: tuple[Laid, ...] = ()
    spent_mm: float = 0.0
    bad: tuple[tuple[float, float], ...] = ()
    label: str = ""
    listed_mm: float = 0.0
    rest: Remains | None = None

    @property
    def is_begun(self) -> bool:
        """Tell whether anything was cut off it."""
        return self.spent_mm > 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class AtTheSaw:
    """All sticks of a house as they lie.

    Attributes:
        sticks: Every stick, opened or not, in cutting order.
        loose: Marks of pieces that have no place at present.
        tried: Marks of pieces that fit in their place though their readings changed since.
    """

    sticks: tuple[StickAtSaw, ...]
    loose: tuple[str, ...] = ()
    tried: tuple[str, ...] = ()

    @property
    def done(self) -> frozenset[str]:
        """Marks of all pieces that are cut and good."""
        return frozenset(laid.piece for stick in self.sticks for laid in stick.done)

    @property
    def open_marks(self) -> frozenset[str]:
        """Marks of all pieces still to be cut."""
        waiting = (laid.piece for stick in self.sticks for laid in stick.next)
        return frozenset((*waiting, *self.loose))

    @property
    def code(self) -> str:
        """Six signs for which piece lies where; they stay while all is cut as planned."""
        return laid_code(
            Row(stick.profile, stick.listed_mm or stick.length_mm, (*stick.done, *stick.next))
            for stick in self.sticks
        )


def nothing_cut(plan: CutPlan) -> AtTheSaw:
    """Return the state before the first cut of a plan."""
    return AtTheSaw(
        sticks=tuple(
            StickAtSaw(
                name=stick.name,
                profile=stick.profile,
                length_mm=stick.length_mm,
                source=stick.source,
                next=stick.laid,
                label=stick.label,
            )
            for stick in plan.sticks
        ),
        loose=plan.unplaced,
    )


def told(state: AtTheSaw, news: Iterable[News]) -> AtTheSaw:
    """Return the state after some news, in the order in which it came.

    Raises:
        StockError: A piece or stick is named that isn't there, or a piece is cut out of turn.
    """
    for one in news:
        state = _told(state, one)
    return state


def _told(state: AtTheSaw, news: News) -> AtTheSaw:
    match news:
        case Cut(piece=mark):
            stick, laid = _waiting(state, mark, "cut")
            return _with(state, _cut_off(stick, laid, is_good=True))
        case Spoiled(piece=mark, rests=rests):
            state, profile = _spoiled(state, mark)
            for rest in rests:
                state = _with_rest(state, profile, rest)
            return state
        case Lost(piece=mark):
            stick = _of_done(state, mark)
            return _taken_back(state, stick, mark)
        case Fits(piece=mark):
            _of_done(state, mark)
            return replace(state, tried=(*state.tried, mark))
        case StickRead(stick=name, length_mm=length_mm):
            stick = _named(state, name)
            if length_mm < stick.spent_mm:
                raise StockError(
                    say(
                        "Stick {name} is read as {length_mm:g} mm long.",
                        name=name,
                        length_mm=length_mm,
                    ),
                    say("{spent_mm:g} mm of it are cut already.", spent_mm=stick.spent_mm),
                    say("Read the whole stick, what is cut off it included."),
                )
            was_mm = stick.listed_mm or stick.length_mm
            read = replace(stick, length_mm=length_mm, listed_mm=was_mm)
            return _with(state, read) if length_mm >= stick.length_mm else _cleared(state, read)
        case BadZone(stick=name, from_mm=from_mm, to_mm=to_mm):
            stick = _named(state, name)
            if not 0.0 <= from_mm < to_mm <= stick.length_mm:
                raise StockError(
                    say(
                        "Stick {name} is bad from {from_mm:g} to {to_mm:g} mm.",
                        name=name,
                        from_mm=from_mm,
                        to_mm=to_mm,
                    ),
                    say("It runs from 0 to {length_mm:g} mm.", length_mm=stick.length_mm),
                    say("Measure both from its left end, the nearer one first."),
                )
            return _cleared(state, replace(stick, bad=(*stick.bad, (from_mm, to_mm))))


def _cut_off(stick: StickAtSaw, laid: Laid, *, is_good: bool) -> StickAtSaw:
    return replace(
        stick,
        done=(*stick.done, laid) if is_good else stick.done,
        next=stick.next[1:],
        spent_mm=laid.end_mm,
    )


def _spoiled(state: AtTheSaw, mark: str) -> tuple[AtTheSaw, str]:
    """Return the state without a piece that was just cut wrong, or that was good until now."""
    if mark in state.done:
        stick = _of_done(state, mark)
        return _taken_back(state, stick, mark), stick.profile
    stick, laid = _waiting(state, mark, "spoiled")
    return _loose(_with(state, _cut_off(stick, laid, is_good=False)), (mark,)), stick.profile


def _taken_back(state: AtTheSaw, stick: StickAtSaw, mark: str) -> AtTheSaw:
    done = tuple(laid for laid in stick.done if laid.piece != mark)
    return _loose(_with(state, replace(stick, done=done)), (mark,))


def _with_rest(state: AtTheSaw, profile: str, rest: Remains) -> AtTheSaw:
    """Return the state with what is left of a spoiled piece as a stick of its own."""
    taken = {each.name for each in state.sticks}
    names = (f"{rest.of}-rest-{n}" for n in range(1, len(taken) + 2))
    stick = StickAtSaw(
        name=next(each for each in names if each not in taken),
        profile=profile,
        length_mm=rest.length_mm,
        source=StickSource.REST,
        rest=rest,
    )
    return replace(state, sticks=(*state.sticks, stick))


def with_sticks(state: AtTheSaw, sticks: Iterable[StickAtSaw]) -> AtTheSaw:
    """Return the state with some sticks more, from which nothing is to come yet."""
    return replace(state, sticks=(*state.sticks, *sticks))


def _cleared(state: AtTheSaw, stick: StickAtSaw) -> AtTheSaw:
    """Return the state with a stick whose pieces have to find their places again."""
    marks = tuple(laid.piece for laid in stick.next)
    return _loose(_with(state, replace(stick, next=())), marks)


def _with(state: AtTheSaw, changed: StickAtSaw) -> AtTheSaw:
    return replace(
        state,
        sticks=tuple(changed if each.name == changed.name else each for each in state.sticks),
    )


def _loose(state: AtTheSaw, marks: tuple[str, ...]) -> AtTheSaw:
    return replace(state, loose=(*state.loose, *marks))


def _named(state: AtTheSaw, name: str) -> StickAtSaw:
    for stick in state.sticks:
        if stick.name == name:
            return stick
    raise StockError(
        say("A stick {name} is named.", name=name),
        say("No stick of that name lies at the saw."),
        say("Take its name from the cutting list."),
    )


def _waiting(state: AtTheSaw, mark: str, told_as: str) -> tuple[StickAtSaw, Laid]:
    for stick in state.sticks:
        for place, laid in enumerate(stick.next):
            if laid.piece == mark and place == 0:
                return stick, laid
            if laid.piece == mark:
                raise StockError(
                    say("{mark} is said to be {told_as}.", mark=mark, told_as=told_as),
                    say(
                        "{piece} lies before it on {stick}, and isn't cut yet.",
                        piece=stick.next[0].piece,
                        stick=stick.name,
                    ),
                    say("Tell the pieces of a stick from its left end on."),
                )
    if mark in state.done:
        raise StockError(
            say("{mark} is said to be {told_as}.", mark=mark, told_as=told_as),
            say("It is cut already, and was good."),
            say('If it is no good any more, tell it so: "lost {mark}".', mark=mark),
        )
    raise StockError(
        say(
            "{mark} is said to be {told_as}.",
            mark=mark or "A piece without a mark",
            told_as=told_as,
        ),
        say("It isn't among the pieces that wait to be cut."),
        say(
            "Take its mark from the cutting list; a piece that was lost after it was "
            "cut is told so."
        ),
    )


def _of_done(state: AtTheSaw, mark: str) -> StickAtSaw:
    for stick in state.sticks:
        if any(laid.piece == mark for laid in stick.done):
            return stick
    raise StockError(
        say("{mark} is told as a piece that was cut.", mark=mark),
        say("It was never cut."),
        say("Take its mark from the cutting list."),
    )
