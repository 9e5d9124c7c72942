"""What really came on the lorry, laid on the sticks of the plan.

Sticks of the ordered length take their places; one of another length takes the place of one that
didn't come, the longest first; what is left over lies at the saw as well, and what didn't come is
missing. What was begun stays. Planning again then needs the least new timber.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import StockError
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw, told, with_sticks
from longpoint.sticks.news.news_words import named_lengths
from longpoint.sticks.news.saw_news import StickRead
from longpoint.sticks.plan import StickSource
from longpoint.survey.house import House

MOST_STICKS: Final = 10_000
SAME_MM: Final = 0.5
"""Two lengths told that differ by less are the same: a tape shows no more."""
SAME_SECTION_MM: Final = 0.25
"""A face or thickness that differs by no more is the same section: half of what a tape shows."""

WAYS: Final = (
    say("came PROFILE LENGTH COUNT"),
    say("crooked PROFILE LENGTH COUNT"),
    say("section PROFILE FACE THICKNESS"),
    say("moisture PROFILE PERCENT"),
)
"""Every way to tell of a delivery."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivery:
    """What was found when the sticks came.

    Attributes:
        came: How many of a length came, by profile, then length [mm]. A profile that isn't named
            came as ordered.
        sections: Face and thickness as measured, by profile, where they aren't those of the house
            file. [mm]
        moisture_percent: Moisture as read with a meter, by profile. [%]
    """

    came: Mapping[str, Mapping[float, int]]
    sections: Mapping[str, tuple[float, float]]
    moisture_percent: Mapping[str, float]


def delivery_in_words(sentences: Sequence[str], house: House) -> Delivery:
    """Return what was told of a delivery.

    Args:
        sentences: Such as "came OG57 5400 6", all lengths of a profile that came; "crooked OG57
            5400 1", how many of these are too bent to use; "section OG57 60 18"; "moisture OG57
            16".
        house: Its profiles and its unit.

    Raises:
        StockError: A sentence can't be understood, names another profile, or more sticks are
            crooked than came.
    """
    came: dict[str, dict[float, int]] = {}
    crooked: list[tuple[str, str, float, int]] = []
    sections: dict[str, tuple[float, float]] = {}
    moisture: dict[str, float] = {}
    for sentence in sentences:
        what, _, rest = sentence.strip().partition(" ")
        match what.casefold():
            case "came":
                profile, length_mm, count = _sticks(sentence, rest, house)
                lengths = came.setdefault(profile, {})
                lengths[length_mm] = lengths.get(length_mm, 0) + count
            case "crooked":
                crooked.append((sentence, *_sticks(sentence, rest, house)))
            case "section":
                profile, (face_mm, thickness_mm) = _figures(sentence, rest, 2, house.units)
                known = house.profile(_known(sentence, profile, house))
                size = (known.width_mm, known.thickness_mm)
                off = max(abs(face_mm - size[0]), abs(thickness_mm - size[1]))
                if off > SAME_SECTION_MM:
                    sections[profile] = (face_mm, thickness_mm)
            case "moisture":
                profile, (percent,) = _figures(sentence, rest, 1, Units.MM)
                if not 0.0 < percent < 100.0:
                    raise _not_understood(sentence)
                moisture[_known(sentence, profile, house)] = percent
            case _:
                raise _not_understood(sentence)
    for sentence, profile, length_mm, count in crooked:
        lengths = came.get(profile, {})
        if lengths.get(length_mm, 0) < count:
            raise StockError(
                say("It is told: {sentence!r}.", sentence=sentence),
                say("Not so many of that length are told to have come."),
                say('Tell all that came of the profile first, such as "came OG57 5400 7".'),
            )
        if count:
            lengths[length_mm] -= count
    return Delivery(came=came, sections=sections, moisture_percent=moisture)


def as_delivered(state: AtTheSaw, came: Mapping[str, Mapping[float, int]]) -> AtTheSaw:
    """Return the state with the sticks that are really there; it may be told again.

    Args:
        state: Where the cutting stands.
        came: How many of a length are there in all, by profile, then length. [mm]
    """
    for profile, lengths in came.items():
        state = _profile_delivered(state, profile, Counter(lengths))
    return state


def _profile_delivered(state: AtTheSaw, profile: str, here: Counter[float]) -> AtTheSaw:
    ours = [
        stick
        for stick in state.sticks
        if stick.profile == profile and stick.source is StickSource.STOCK
    ]
    for stick in ours:
        if stick.is_begun:
            _take(here, stick.length_mm)
    waiting = [stick for stick in ours if not stick.is_begun]
    # Those with pieces on them come first: a place that is free anyway needs no stick.
    waiting.sort(key=lambda stick: (not stick.next, -_wanted_mm(stick)))
    unmet = [stick for stick in waiting if not _take(here, _wanted_mm(stick))]
    left = sorted(here.elements(), reverse=True)
    met = [stick for stick in waiting if stick not in unmet]
    reads = [(stick, _wanted_mm(stick)) for stick in met]
    reads += list(zip(unmet, left, strict=False))
    reads += [(stick, 0.0) for stick in unmet[len(left) :]]
    news = [
        StickRead(stick=stick.name, length_mm=length_mm)
        for stick, length_mm in reads
        if abs(stick.length_mm - length_mm) >= SAME_MM
    ]
    extra = left[len(unmet) :]
    return with_sticks(told(state, news), _extra(profile, extra, state))


def _wanted_mm(stick: StickAtSaw) -> float:
    return stick.listed_mm or stick.length_mm


def _take(here: Counter[float], length_mm: float) -> bool:
    """Take one stick of a length from those that are here; False where there is none."""
    found = next((each for each in here if here[each] and abs(each - length_mm) < SAME_MM), None)
    if found is None:
        return False
    here[found] -= 1
    return True


def _extra(profile: str, lengths_mm: Iterable[float], state: AtTheSaw) -> list[StickAtSaw]:
    """Sticks that the plan doesn't know: spares, and what came on top."""
    taken = {stick.name for stick in state.sticks}
    numbers = iter(range(1, len(taken) + MOST_STICKS + 2))
    sticks = []
    for length_mm in lengths_mm:
        name = next(n for number in numbers if (n := f"{profile}-{number}") not in taken)
        sticks.append(
            StickAtSaw(name=name, profile=profile, length_mm=length_mm, source=StickSource.STOCK)
        )
    return sticks


def _sticks(sentence: str, rest: str, house: House) -> tuple[str, float, int]:
    said, _, count = rest.strip().rpartition(" ")
    if not count.isdecimal() or len(count) > 5 or int(count) > MOST_STICKS:
        raise _not_understood(sentence)
    profile, (length_mm,) = _figures(sentence, said, 1, house.units)
    return _known(sentence, profile, house), length_mm, int(count)


def _figures(sentence: str, rest: str, count: int, units: Units) -> tuple[str, tuple[float, ...]]:
    try:
        return named_lengths(sentence, rest, count, units)
    except StockError:
        raise _not_understood(sentence) from None


def _known(sentence: str, profile: str, house: House) -> str:
    names = [each.name for each in house.profiles]
    if profile not in names:
        raise StockError(
            say("It is told: {sentence!r}.", sentence=sentence),
            say("The house file has no profile {profile!r}.", profile=profile),
            say("Name one of these: {names}.", names=joined(", ", names)),
        )
    return profile


def _not_understood(sentence: str) -> StockError:
    return StockError(
        say("It is told: {sentence!r}.", sentence=sentence),
        say("That can't be understood."),
        say("Tell it in one of these ways: {ways}.", ways=joined("; ", WAYS)),
    )
