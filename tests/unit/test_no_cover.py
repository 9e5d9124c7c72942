"""Lines are counted while a test runs, and neither while tests are read nor where one is spared."""

import sys

import pytest

TRACED_WHILE_READ = sys.gettrace()


def test_nothing_is_traced_while_tests_are_read() -> None:
    assert TRACED_WHILE_READ is None


@pytest.mark.no_cover
def test_nothing_is_traced_where_no_lines_are_counted() -> None:
    assert sys.gettrace() is None


def test_all_else_is_traced_when_lines_are_counted(pytestconfig: pytest.Config) -> None:
    assert (sys.gettrace() is not None) == bool(pytestconfig.getoption("cov_source", None))
