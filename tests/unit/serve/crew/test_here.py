from hypothesis import given
from hypothesis import strategies as st

from longpoint.journal import Key, lacking, seen
from longpoint.serve.crew.here import Here, HouseHere

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


@given(first=KEYS, later=KEYS, there=KEYS)
def test_looking_only_at_what_came_tells_the_same_as_looking_at_all(
    first: list[Key], later: list[Key], there: list[Key]
) -> None:
    store, house = Added(), HouseHere()
    for some in (first, [key for key in later if key not in first]):
        store.all += some
        house.look(store, "h")
        assert house.seen() == seen(store.all)
        assert house.lacking(seen(there)) == lacking(store.all, seen(there))
    assert store.read == len(store.all)


def test_a_house_that_was_forgotten_is_read_anew() -> None:
    store, here = Added(), Here(most_houses=1)
    store.all = [Key("p", 1)]
    for house in ("h", "other", "h"):
        assert here.of(store, house).seen() == seen(store.all)
    assert store.read == 3
