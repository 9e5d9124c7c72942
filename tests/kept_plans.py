"""Cut plans and forecasts kept from test to test, where a test is about what is made of them.

Both are pure functions of frozen records, and most of the time of a plan. Tests about commands,
pages and sheets ask for the same few houses again and again: there the same question gets the
answer that it got before. Nothing is kept where the planning itself is what is tested.
"""

from collections import OrderedDict
from collections.abc import Callable, Generator
from pathlib import Path
from typing import Any, Final

import pytest

TESTS: Final = Path(__file__).resolve().parent
ABOUT_WHAT_IS_MADE: Final = tuple(
    TESTS / folder
    for folder in ("docs", "golden", "unit/cli", "unit/exchange", "unit/render", "unit/serve")
)
KEPT: Final = ("plan_sticks", "forecast_house")
"""The steps of `longpoint.pipeline` that take the time."""
MOST: Final = 64

Step = Callable[..., Any]


def kept(step: Step) -> Step:
    """Return a step that answers what it was asked before, by equal records, as it did then."""
    answers: OrderedDict[object, Any] = OrderedDict()

    def asked(*questions: object, **named: object) -> object:
        key = (*map(_told_apart, questions), *((n, _told_apart(q)) for n, q in named.items()))
        try:
            hash(key)
        except TypeError:
            # Other trim is kept as the tables that were read, and those have no hash.
            return step(*questions, **named)
        if key not in answers:
            answers[key] = step(*questions, **named)
        answers.move_to_end(key)
        while len(answers) > MOST:
            answers.popitem(last=False)
        return answers[key]

    return asked


def _told_apart(question: object) -> object:
    """Return what tells a question from others: one of our engines by its kind alone."""
    from longpoint.forecast.chances import Imagined
    from longpoint.solvers.highs import HighsSolver
    from longpoint.solvers.numpy_lines import NumpyLines

    if isinstance(question, Imagined) and isinstance(question.engine, NumpyLines):
        return (NumpyLines, question.draws, question.seed)
    return HighsSolver if isinstance(question, HighsSolver) else question


_STEPS: Final[dict[Step, Step]] = {}


@pytest.hookimpl(wrapper=True)
def pytest_runtest_protocol(item: pytest.Item) -> Generator[None, object, object]:
    """Keep plans for a test of those folders, and for what it sets up."""
    if not any(item.path.is_relative_to(folder) for folder in ABOUT_WHAT_IS_MADE):
        return (yield)
    import longpoint.pipeline

    with pytest.MonkeyPatch.context() as patch:
        for name in KEPT:
            step = getattr(longpoint.pipeline, name)
            patch.setattr(longpoint.pipeline, name, _STEPS.setdefault(step, kept(step)))
        return (yield)
