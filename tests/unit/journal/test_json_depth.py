import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.journal.json_depth import is_nested_deeper

VALUES = st.recursive(
    st.none() | st.integers() | st.text(alphabet='[]{}"\\a', max_size=6),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner),
    max_leaves=12,
)


def depth_of(value: Any) -> int:  # noqa: ANN401
    match value:
        case list():
            return 1 + max(map(depth_of, value), default=0)
        case dict():
            return 1 + max(map(depth_of, value.values()), default=0)
        case _:
            return 0


@given(value=VALUES, most=st.integers(1, 6))
def test_the_depth_of_a_text_is_that_of_what_it_holds(value: object, most: int) -> None:
    assert is_nested_deeper(json.dumps(value), most) is (depth_of(value) > most)


@pytest.mark.parametrize("text", ["[" * 100_000, '{"a":' * 100_000, '"' + "[" * 100])
def test_what_never_closes_is_deep(text: str) -> None:
    assert is_nested_deeper(text, 30)
