"""A crew's own figures as a document: what each frame told, so that nothing need be taken on trust.

Beliefs are not written down. They are worked out of the frames again, so that a document can't
contradict itself.
"""

from collections.abc import Callable, Iterable, Mapping
from typing import Any, Final, TypeVar, assert_never

from longpoint.errors import ExchangeError, Finding, QuantityError, Severity
from longpoint.forecast.learning.as_built import Axis
from longpoint.forecast.learning.belief import Prior
from longpoint.forecast.learning.setup import Key, Learned, Seen, Term
from longpoint.forecast.learning.setup_key import AngleKey, SizeKey
from longpoint.speech.said import say
from longpoint.survey.house_file.trouble import quoted, shown

FORMAT: Final = "longpoint-crew/1"
PLACE: Final = say("crew figures")

MOST_OFF: Final = 20.0
"""A frame further out than this, in degrees or millimetres, is a slip of the pen; our limit."""

_LIST: Final = "terms"
_T = TypeVar("_T")


def learned_document(learned: Learned) -> dict[str, object]:
    """Return what a crew has learned as a document that `read_learned` reads back to the same.

    Args:
        learned: What it has learned.

    Returns:
        A document that can be written as JSON.

    Example:
        >>> learned_document(Learned())
        {'format': 'longpoint-crew/1', 'terms': []}
    """
    return {"format": FORMAT, _LIST: [_written(term) for term in learned.terms]}


def read_learned(document: Mapping[str, object]) -> tuple[Learned, tuple[Finding, ...]]:
    """Return what a crew has learned, from a document.

    A bad entry is left out and said; it costs no good one.

    Args:
        document: The parsed document.

    Returns:
        What can be read, and a warning for each entry left out.

    Raises:
        ExchangeError: It is no document of this format.
    """
    written = document.get("format")
    if written != FORMAT:
        raise ExchangeError(
            say("The format is written as {shown}.", shown=shown(written)),
            say('A crew\'s own figures are kept as "{format}".', format=FORMAT),
            say("Look whether it is another file, or one of a later version of this program."),
        )
    troubles = [
        QuantityError(
            say("The key {name} was read.", name=quoted(str(name))),
            say("No such key is known here."),
            say('What was learned stands under "{list}"; take it out.', list=_LIST),
        )
        for name in document
        if name not in ("format", _LIST)
    ]
    terms: list[Term] = []
    for part in _each(document.get(_LIST, []), _LIST, _term):
        match part:
            case QuantityError():
                troubles.append(part)
            case (term, found):
                terms.append(term)
                troubles += found
    return Learned(terms=tuple(terms)), tuple(_finding(trouble) for trouble in troubles)


def _written(term: Term) -> dict[str, object]:
    prior = term.prior
    return {
        **_key_written(term.key),
        "set_up": term.set_up,
        "prior": {"mean": prior.mean, "mean_sd": prior.mean_sd, "spread": prior.spread},
        "frames": [_seen(seen) for seen in term.seen],
    }


def _key_written(key: Key) -> dict[str, object]:
    match key:
        case AngleKey(saw=saw, setting=setting, blade=blade):
            return {"saw": saw, "setting": setting, "blade": blade}
        case SizeKey(tape=tape, mode=mode):
            return {"tape": tape, "mode": mode}
        case _:
            assert_never(key)


def _seen(seen: Seen) -> dict[str, object]:
    axis = {} if seen.axis is None else {"axis": seen.axis.value}
    return {"mark": seen.mark, **axis, "off": seen.value, "weight": seen.weight}


def _each(
    written: object, path: str, read: Callable[[Mapping[str, Any], str], _T]
) -> Iterable[_T | QuantityError]:
    """Give each entry of a list as read, or the trouble with it."""
    if not isinstance(written, list | tuple):
        yield _wrong(written, path, say("A list of tables is wanted."))
        return
    for number, entry in enumerate(written, start=1):
        where = say("{path}, entry {number}", path=path, number=number)
        try:
            if not isinstance(entry, Mapping):
                raise _wrong(entry, where, say("A table is wanted."))
            yield read(entry, where)
        except QuantityError as trouble:
            yield trouble


def _term(entry: Mapping[str, Any], path: str) -> tuple[Term, list[QuantityError]]:
    key = _key(entry, path)
    is_size = isinstance(key, SizeKey)
    seen: list[Seen] = []
    troubles: list[QuantityError] = []
    for part in _each(
        entry.get("frames", []),
        say("{path}, frames", path=path),
        lambda e, p: _read_seen(e, p, is_size=is_size),
    ):
        if isinstance(part, Seen):
            seen.append(part)
        else:
            troubles.append(part)
    term = Term(key=key, prior=_prior(entry, path), set_up=_set_up(entry, path))
    for each in seen:
        term = term.with_seen(each)
    return term, troubles


def _key(entry: Mapping[str, Any], path: str) -> Key:
    if ("saw" in entry) is ("tape" in entry):
        raise _wrong(entry, path, say("The name of a saw is wanted, or that of a tape."))
    if "saw" in entry:
        saw, setting, blade = (_text(entry, name, path) for name in ("saw", "setting", "blade"))
        return AngleKey(saw=saw, setting=setting, blade=blade)
    return SizeKey(tape=_text(entry, "tape", path), mode=_text(entry, "mode", path))


def _prior(entry: Mapping[str, Any], path: str) -> Prior:
    written = entry.get("prior")
    where = say("{path}, prior", path=path)
    if not isinstance(written, Mapping):
        raise _wrong(written, where, say("A table with mean, mean_sd and spread is wanted."))
    return Prior(
        mean=_number(written, "mean", where),
        mean_sd=_number(written, "mean_sd", where),
        spread=_number(written, "spread", where),
    )


def _set_up(entry: Mapping[str, Any], path: str) -> int:
    written = entry.get("set_up", 1)
    if not isinstance(written, int) or isinstance(written, bool) or written < 1:
        raise _wrong(written, say("{path}, set_up", path=path), say("A count from 1 on is wanted."))
    return written


def _read_seen(entry: Mapping[str, Any], path: str, *, is_size: bool) -> Seen:
    mark = _text(entry, "mark", path)
    value = _number(entry, "off", path)
    weight = _number(entry, "weight", path) if "weight" in entry else 1.0
    axes = {axis.value: axis for axis in Axis}
    axis = axes.get(str(entry.get("axis", "")))
    if not mark:
        raise _wrong(mark, say("{path}, mark", path=path), say("The mark of a frame is wanted."))
    if abs(value) > MOST_OFF:
        raise _wrong(
            value,
            say("{path}, off", path=path),
            say(
                "No frame is out by more than {most_off:g}.",
                most_off=MOST_OFF,
            ),
        )
    if not 0.0 < weight <= 1.0:
        raise _wrong(
            weight, say("{path}, weight", path=path), say("A weight is more than 0 and at most 1.")
        )
    if is_size is (axis is None):
        wanted = say("width or height is wanted") if is_size else say("An angle has no axis")
        raise _wrong(entry.get("axis"), say("{path}, axis", path=path), f"{wanted}.")
    return Seen(mark=mark, value=value, weight=weight, axis=axis)


def _text(entry: Mapping[str, Any], name: str, path: str) -> str:
    written = entry.get(name, "")
    if not isinstance(written, str):
        raise _wrong(
            written, say("{path}, {name}", path=path, name=name), say("Text in quotes is wanted.")
        )
    return written


def _number(entry: Mapping[str, Any], name: str, path: str) -> float:
    written = entry.get(name)
    if isinstance(written, bool) or not isinstance(written, int | float) or not abs(written) < 1e9:
        raise _wrong(
            written, say("{path}, {name}", path=path, name=name), say("A number is wanted.")
        )
    return float(written)


def _wrong(written: object, path: str, wanted: str) -> QuantityError:
    return QuantityError(
        say("{path} is written as {shown}.", path=path, shown=shown(written)),
        wanted,
        say("Mend it, or read the frame's gaps again; what is left out teaches nothing."),
    )


def _finding(trouble: QuantityError) -> Finding:
    return Finding(
        code="crew-figure-unreadable",
        severity=Severity.WARNING,
        place=PLACE,
        read=trouble.read,
        wrong=say("{wrong} That part is left out.", wrong=trouble.wrong),
        do=trouble.do,
    )
