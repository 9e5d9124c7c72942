from longpoint.journal import Entry, Key, lacking, merged, seen


def entry(device: str, counter: int, **said: object) -> Entry:
    head = {"device": device, "counter": counter, "at": "", "house": "h", "what": "house-named"}
    return {**head, **said}


HERE = [entry("p", 1), entry("p", 2), entry("q", 1)]
KEYS = [Key("p", 1), Key("p", 2), Key("q", 1)]


def test_what_the_other_lacks_is_all_it_has_not_seen() -> None:
    assert lacking(KEYS, seen(KEYS[:1])) == (KEYS[2], KEYS[1])
    assert lacking(KEYS, seen(KEYS)) == ()
    assert set(lacking(KEYS, {})) == set(KEYS)


def test_counts_that_a_device_never_gave_are_not_asked_for() -> None:
    here = [Key("p", 3), Key("p", 17)]
    assert lacking(here, seen(here)) == ()


def test_one_that_is_missing_before_the_highest_is_sent() -> None:
    here = [Key("p", 1), Key("p", 3), Key("p", 9)]
    assert Key("p", 3) in lacking(here, seen([Key("p", 1), Key("p", 9)]))
    # As many, as high, and yet others.
    assert Key("p", 3) in lacking(here, seen([Key("p", 1), Key("p", 2), Key("p", 9)]))


def test_one_who_knows_a_higher_count_is_heard_first() -> None:
    assert lacking(KEYS[:1], seen([Key("p", 5)])) == ()
    assert lacking([*KEYS[:1], Key("p", 5)], seen([Key("p", 5)])) == (Key("p", 1), Key("p", 5))


def test_taking_in_twice_is_taking_in_once() -> None:
    once = merged([], HERE)
    again = merged(once.entries, [*HERE, *HERE])
    assert again.entries == once.entries
    assert (len(once.added), again.added, again.known) == (3, (), 6)


def test_one_entry_twice_in_one_bag_is_taken_once() -> None:
    found = merged([], [HERE[0], HERE[0]])
    assert (len(found.added), found.known) == (1, 1)


def test_another_entry_under_a_key_is_refused_and_the_rest_is_taken() -> None:
    other = entry("p", 1, name="Lark")
    found = merged(HERE, [other, entry("q", 2)])
    assert [clash.key for clash in found.clashes] == [Key("p", 1)]
    assert found.clashes[0].here == HERE[0]
    assert found.clashes[0].there == other
    assert found.added == (entry("q", 2),)
