from collections.abc import Sequence

from hypothesis import given
from hypothesis import strategies as st

from longpoint.journal import Key, counters_sum, lacking, seen
from longpoint.serve.crew.here import Here, HouseHere, Texts

KEYS = st.lists(st.builds(Key, st.sampled_from("pqr"), st.integers(1, 9)), unique=True)


class Added:
    """Keys that are only ever added, as a store has them."""

    def __init__(self) -> None:
        self.all: list[Key] = []
        self.read = 0

    def keys(self, house: str, after: int = 0) -> tuple[tuple[int, Key], ...]:
        found = tuple(enumerate(self.all, start=1))[after:]
        self.read += len(found)
        return found

    def texts(self, keys: Sequence[Key]) -> tuple[str | None, ...]:
        self.read += len(keys)
        return tuple(f"{key.device}{key.counter}" if key in self.all else None for key in keys)


def lacking_by_sets(here: list[Key], there: list[Key]) -> list[Key]:
    """Return what is lacking, with every count of a device looked at."""
    found = []
    for device in {key.device for key in here}:
        ours = {key.counter for key in here if key.device == device}
        theirs = {key.counter for key in there if key.device == device}
        if max(theirs, default=0) > max(ours):
            continue
        before = {counter for counter in ours if counter <= max(theirs, default=0)}
        sent = ours - before if counters_sum(before) == counters_sum(theirs) else ours
        found += [Key(device, counter) for counter in sent]
    return sorted(found, key=lambda key: (key.counter, key.device))


@given(first=KEYS, later=KEYS, there=KEYS)
def test_looking_only_at_what_came_tells_the_same_as_looking_at_all(
    first: list[Key], later: list[Key], there: list[Key]
) -> None:
    store, house = Added(), HouseHere()
    for some in (first, [key for key in later if key not in first]):
        store.all += some
        house.look(store, "h")
        assert house.seen() == seen(store.all)
        assert list(house.lacking(seen(there))) == lacking_by_sets(store.all, there)
        assert list(lacking(store.all, seen(there))) == lacking_by_sets(store.all, there)
    assert store.read == len(store.all)


def test_a_house_that_was_forgotten_is_read_anew() -> None:
    store, here = Added(), Here(most_houses=1)
    store.all = [Key("p", 1)]
    for house in ("h", "other", "h"):
        assert here.of(store, house).seen() == seen(store.all)
    assert store.read == 3


def test_an_entry_that_many_ask_for_is_read_once_while_it_is_remembered() -> None:
    store, texts = Added(), Texts(most_signs=6)
    store.all = [Key("p", counter) for counter in range(1, 5)]
    for _ in range(3):
        assert texts.of(store, store.all[:3]) == ["p1", "p2", "p3"]
    assert store.read == 3
    assert texts.of(store, store.all[3:]) == ["p4"]
    assert texts.of(store, store.all[:1]) == ["p1"]
    assert store.read == 5


def test_one_that_is_not_there_is_left_out() -> None:
    store = Added()
    store.all = [Key("p", 1)]
    assert Texts().of(store, [Key("p", 1), Key("p", 2)]) == ["p1"]
