"""The ways to lay and cut the pieces of one stick that give nothing up, by the saw's settings.

Nothing is given up as long as the pieces fit, what is left is as long as it was, and no piece waits
for a much shorter one. Of the ways that begin and end with the same settings, the one counts that
sets the saw anew least often on the stick itself.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from longpoint.sticks.lay.demand import PER_MM
from longpoint.sticks.lay.fit import Filled
from longpoint.sticks.lay.laying import Place, Workload, gap, left_over, tip
from longpoint.sticks.order.saw_order import ABOUT_AS_LONG_MM

MOST_STATES: Final = 2000
"""Sub-sets and ends up to which every way is looked at."""
_WAITS: Final = round(ABOUT_AS_LONG_MM * PER_MM)
"""By how much a piece may be longer than one that is cut before it on its stick, as from stick to
stick; as much as in the order that is there, where none of the others will do."""

Setting = int
"""A setting of the saw by its number; equal settings have one number."""
Ends = tuple[Setting, Setting]
_End = tuple[int, int]
_Key = tuple[int, Setting, Setting, _End]
_Part = tuple[int, int, tuple[Place, ...]]
"""Changes of the saw beside the pieces' own, length used without the last point, places."""


@dataclass(frozen=True, slots=True)
class Way:
    """One way to lay the pieces of a stick.

    Attributes:
        first: Setting of the first cut.
        last: Setting of the last cut.
        changes: How often the saw is set anew between the two.
        used: Length used between the trims. [0.01 mm]
        places: The pieces from left to right.
    """

    first: Setting
    last: Setting
    changes: int
    used: int
    places: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Ways:
    """The ways of one stick: one for each pair of first and last setting.

    Attributes:
        ways: The ways; the one that the stick came with is among them or bettered.
        least: No way sets the saw anew less often on the stick.
        ends: The settings of the pieces' ends, each once.
        are_all: True when every way was looked at.
    """

    ways: tuple[Way, ...]
    least: int
    ends: tuple[Setting, ...]
    are_all: bool


@dataclass(frozen=True, slots=True)
class Cuttable:
    """One stick to be put in the order.

    Attributes:
        number: Its number among the sticks of its profile.
        biggest_mm: Length of its longest piece, tip to tip. [mm]
        ways: The ways to lay it.
    """

    number: int
    biggest_mm: float
    ways: Ways


def in_turn(
    sticks: Sequence[Cuttable], cut: int, about_mm: float, most: int | None = None
) -> list[int]:
    """Return the numbers of the sticks that may be cut next.

    Args:
        sticks: The sticks of a profile, biggest first.
        cut: Those cut already, as bits; not all of them.
        about_mm: A stick may be cut before one whose biggest piece is longer by this. >= 0. [mm]
        most: Return no more than these, biggest first; None: all.
    """
    biggest = (~cut & (cut + 1)).bit_length() - 1
    least_mm = sticks[biggest].biggest_mm - about_mm
    able: list[int] = []
    for n in range(biggest, len(sticks)):
        if sticks[n].biggest_mm < least_mm or len(able) == most:
            break
        if not cut >> n & 1:
            able.append(n)
    return able


def ways_of(
    work: Workload,
    settings: Sequence[tuple[Ends, Ends]],
    stick: Filled,
    room: int,
    least_left: int,
) -> Ways:
    """Return the ways to lay the pieces of a stick.

    Args:
        work: The pieces of the profile.
        settings: For each piece the settings of its left and right end, as it is and turned.
        stick: The stick as it is laid; holds at least one piece.
        room: What it has between the trims. [0.01 mm]
        least_left: What must be left to use behind its last cut. [0.01 mm]
    """
    as_it_lies = _as_it_lies(settings, stick)
    turned = {place.piece: _turned(work, settings, place.piece) for place in stick.places}
    own = sum(min(turn.own for turn in turns) for turns in turned.values())
    wait = _longest_wait(work, stick.places)
    found = dict[tuple[Setting, Setting], Way]()
    parts: dict[_Key, list[_Part]] | None = None
    for waits in sorted({_WAITS, max(_WAITS, wait)}):
        most_more: int | None = None
        if wait <= waits:
            found = {(as_it_lies.first, as_it_lies.last): as_it_lies}
            # Two joints at most are gained by other ends, so one change more is the most worth it.
            most_more = as_it_lies.changes + 1 - own
        parts = _all_parts(work, turned, waits, room, most_more)
        for (_, first, last, end), entries in (parts or {}).items():
            for more, before, places in entries:
                changes, used = own + more, before + tip(end[0])
                known = found.get((first, last))
                if known is not None and (known.changes, known.used) <= (changes, used):
                    continue
                if used <= room and left_over(work, places, room) >= least_left:
                    found[first, last] = Way(first, last, changes, used, places)
        if found:
            break
    least = min(way.changes for way in found.values())
    worth = tuple(way for way in found.values() if way.changes <= least + 1)
    ends = [(turn.first, turn.last) for turns in turned.values() for turn in turns]
    return Ways(
        worth,
        own if parts is None else least,
        tuple(dict.fromkeys(end for both in ends for end in both)),
        are_all=parts is not None,
    )


@dataclass(frozen=True, slots=True)
class _Turned:
    """A piece as it may lie: its ends, their settings, changes from one to the other."""

    place: Place
    mid: int
    left: _End
    right: _End
    first: Setting
    last: Setting
    own: int


def _turned(
    work: Workload, settings: Sequence[tuple[Ends, Ends]], piece: int
) -> tuple[_Turned, ...]:
    found = []
    for turned in (False, True) if work.can_turn[piece] else (False,):
        place = Place(piece, turned)
        first, last = settings[piece][turned]
        left, right = work.ends(place)
        found.append(_Turned(place, work.mid[piece], left, right, first, last, int(first != last)))
    return tuple(found)


def _as_it_lies(settings: Sequence[tuple[Ends, Ends]], stick: Filled) -> Way:
    ends = [settings[place.piece][place.turned] for place in stick.places]
    changes = sum(left != right for left, right in ends) + sum(
        before[1] != after[0] for before, after in pairwise(ends)
    )
    return Way(ends[0][0], ends[-1][1], changes, stick.used, stick.places)


def _all_parts(
    work: Workload,
    turned: Mapping[int, tuple[_Turned, ...]],
    waits: int,
    room: int,
    most_more: int | None,
) -> dict[_Key, list[_Part]] | None:
    """All pieces laid, for each pair of ends the parts none of which betters another.

    Of changes only those count that are more than the pieces' own; parts with more than `most_more`
    of them are left out.
    """
    pieces = sorted(turned, key=lambda piece: (-work.mid[piece], piece))
    before = _longer_alikes(turned, pieces)
    least = [min(turn.own for turn in turned[piece]) for piece in pieces]
    layer: dict[_Key | None, list[_Part]] = {None: [(0, 0, ())]}
    for _ in pieces:
        following: dict[_Key | None, list[_Part]] = {}
        for key, entries in layer.items():
            taken = key[0] if key else 0
            rest = [n for n in range(len(pieces)) if not taken >> n & 1]
            longest = work.mid[pieces[rest[0]]]
            for n in rest:
                if work.mid[pieces[n]] < longest - waits:
                    break
                alike = before[n]
                if alike is not None and not taken >> alike & 1:
                    continue
                for turn in turned[pieces[n]]:
                    first, extra, more = turn.first, tip(turn.left[0]), turn.own - least[n]
                    if key is not None:
                        first, extra = key[1], gap(key[3], turn.left)
                        more += key[2] != turn.first
                    able = [
                        (changes + more, used + extra + turn.mid, (*places, turn.place))
                        for changes, used, places in entries
                        if (most_more is None or changes + more <= most_more)
                        and used + extra + turn.mid <= room
                    ]
                    if able:
                        at = (taken | 1 << n, first, turn.last, turn.right)
                        following[at] = _unbettered([*following.get(at, ()), *able])
        if len(following) > MOST_STATES:
            return None
        layer = following
    return {key: entries for key, entries in layer.items() if key is not None}


def _unbettered(parts: list[_Part]) -> list[_Part]:
    """The parts that no other betters, fewest changes first."""
    if len(parts) == 1:
        return parts
    kept: list[_Part] = []
    for part in sorted(parts, key=lambda part: part[:2]):
        if not kept or part[1] < kept[-1][1]:
            kept.append(part)
    return kept


def _longest_wait(work: Workload, places: Sequence[Place]) -> int:
    """By how much at most a piece is longer than one before it. [0.01 mm]"""
    mids = [work.mid[place.piece] for place in places]
    return max(max(mids[n:]) - mid for n, mid in enumerate(mids))


def _longer_alikes(
    turned: Mapping[int, tuple[_Turned, ...]], pieces: Sequence[int]
) -> list[int | None]:
    """For each piece the one before it with the same ends: of these the longest comes first."""
    seen: dict[object, int] = {}
    before = list[int | None]()
    for n, piece in enumerate(pieces):
        kind = tuple((turn.left, turn.right, turn.first, turn.last) for turn in turned[piece])
        before.append(seen.get(kind))
        seen[kind] = n
    return before
