from dataclasses import replace

from longpoint.survey.as_built import AsBuilt, JointRead
from longpoint.survey.per_side import PerSide

UNREAD = (None, None, None)
NOTHING = AsBuilt(
    gaps=(None, None, None, None),
    quirks=PerSide(head=UNREAD, right=UNREAD, bottom=UNREAD, left=UNREAD),
    steps_mm=(None, None, None, None),
)


def test_a_set_of_which_nothing_was_read_says_nothing() -> None:
    assert NOTHING.says_nothing


def test_a_single_nought_says_something() -> None:
    shut = JointRead(heel_mm=0.0)
    flush = replace(NOTHING.quirks, left=(None, None, 0.0))

    assert not replace(NOTHING, gaps=(None, None, None, shut)).says_nothing
    assert not replace(NOTHING, quirks=flush).says_nothing
    assert not replace(NOTHING, steps_mm=(0.0, None, None, None)).says_nothing
