from longpoint.journal import Entry, Key, lacking, merged, seen


def entry(device: str, counter: int, **said: object) -> Entry:
    head = {"device": device, "counter": counter, "at": "", "house": "h", "what": "house-named"}
    return {**head, **said}


HERE = [entry("p", 1), entry("p", 2), entry("q", 1)]


def test_what_the_other_lacks_is_all_it_has_not_seen() -> None:
    assert lacking(HERE, {"p": 1}) == (HERE[1], HERE[2])
    assert lacking(HERE, seen(HERE)) == ()
    assert lacking(HERE, {}) == tuple(HERE)


def test_a_gap_is_asked_for_again() -> None:
    there = [entry("p", 1), entry("p", 3)]
    assert seen(there) == {"p": 1}
    assert seen([entry("p", 2)]) == {}


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
