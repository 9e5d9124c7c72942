"""The cutting as two phones tell of it, each without the other: what is cut stays cut."""

from dataclasses import replace

from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw
from longpoint.sticks.news.saw_document import KeptSaw


def joined_saws(earlier: KeptSaw, later: KeptSaw) -> KeptSaw:
    """Return where the cutting stands after one phone's news and another's.

    Timber that is spent never comes back, so of one stick that story counts which has spent more of
    it; where they have spent the same, the later one. Whoever told the later story knew the other
    where it has spent as much. Two phones that tell of different cuts on one stick at one time
    can't both be right: the longer story counts there.

    Args:
        earlier: What counted so far.
        later: What was told next; it may know the earlier story or not.

    Returns:
        The later story with every stick that the earlier one knows to be cut further. A piece that
        was to come off such a stick is loose, one that is cut is cut on no other.
    """
    before = {stick.name: stick for stick in earlier.state.sticks}
    taken = {
        stick.name
        for stick in later.state.sticks
        if stick.name in before and before[stick.name].spent_mm > stick.spent_mm
    }
    known = {stick.name for stick in later.state.sticks}
    more = [s for s in earlier.state.sticks if s.name not in known and s.is_begun]
    if not taken and not more:
        return later
    sticks = [before[s.name] if s.name in taken else s for s in later.state.sticks] + more
    taken |= {stick.name for stick in more}
    cut_there = {p.piece for s in sticks if s.name in taken for p in s.done}
    return replace(
        later,
        state=_settled(sticks, taken, later.state, cut_there),
        shapes={
            **earlier.shapes,
            **later.shapes,
            **{mark: earlier.shapes[mark] for mark in cut_there if mark in earlier.shapes},
        },
    )


def _settled(
    sticks: list[StickAtSaw], taken: set[str], later: AtTheSaw, cut_there: set[str]
) -> AtTheSaw:
    """Return sticks on which each piece is once: cut, or still to be cut, or loose."""
    done: set[str] = set()
    kept = []
    for stick in sticks:
        # A piece that both cut is counted once; the timber of the other is spent all the same.
        good = tuple(each for each in stick.done if each.piece not in done)
        done |= {each.piece for each in good}
        kept.append(replace(stick, done=good))
    placed: set[str] = set()
    for number, stick in enumerate(kept):
        waiting = () if stick.name in taken else stick.next
        following = tuple(each for each in waiting if each.piece not in done)
        placed |= {each.piece for each in following}
        kept[number] = replace(stick, next=following)
    wanted = (*later.loose, *(each.piece for stick in later.sticks for each in stick.next))
    loose = tuple(m for m in dict.fromkeys(wanted) if m not in done | placed)
    return AtTheSaw(
        sticks=tuple(kept),
        loose=loose,
        tried=tuple(mark for mark in later.tried if mark not in cut_there),
    )
