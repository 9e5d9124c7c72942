import pytest

from longpoint.phone.entry_words import entry_words

READ = {"opening": "W3", "line": "top", "value_text": "1178", "unit": "mm", "again": False}


@pytest.mark.parametrize(
    ("entry", "words"),
    [
        ({"what": "house-made", "name": "Wren"}, "house begun: Wren"),
        ({"what": "house-named", "name": "Lark"}, "house named Lark"),
        ({"what": "reading", **READ}, "W3 top read: 1178 mm"),
        ({"what": "setting", "key": ["saws", "S1", "kerf"], "value": 2.4}, "saw S1 kerf = 2.4"),
        ({"what": "setting", "key": ["saws"], "value": None}, "saws taken out"),
        ({"what": "setting", "key": ["stock"], "value": [{}, {}]}, "stock = 2 entries"),
        (
            {"what": "opening-changed", "opening": "W1", "key": ["top"], "value": [7, 8]},
            "W1 top = 7 and 8",
        ),
        ({"what": "opening-left-out", "opening": "W1"}, "W1 left out"),
        ({"what": "cut-news", "told": "cut W1-head", "state": ""}, "at the saw: cut W1-head"),
        ({"what": "wall-gaps", "opening": "W1", "gaps": {}}, "W1: gaps read on the wall"),
        ({"what": "opened-file", "text": 'name = "Wren"'}, "house file: Wren, 0 openings"),
        ({"what": "opened-file", "text": "= ="}, "house file, which can't be read"),
        ({"what": "place-left-out", "place": ["rooms", "Hall", "walls", "N"]}, "Hall N left out"),
        ({"what": "moon-seen"}, "moon-seen, which a newer longpoint wrote"),
        ({"what": "reading"}, "reading, which can't be read"),
    ],
)
def test_an_entry_is_told_in_words(entry: dict[str, object], words: str) -> None:
    assert entry_words(entry) == words
