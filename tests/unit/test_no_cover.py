"""The marker that spares a test the counting of lines does so, also side by side."""

import sys

import pytest


@pytest.mark.no_cover
def test_nothing_is_traced_where_no_lines_are_counted() -> None:
    assert sys.gettrace() is None
