"""Puts the page's own engines behind the core's ports."""

from collections.abc import Callable, Sequence
from functools import cache
from importlib.resources import files
from typing import Protocol

from longpoint.forecast.chances import Imagined
from longpoint.phone import Ports, answer
from longpoint.sheets.in_tongue import country_tongue
from longpoint.solvers.called_lines import CalledLines, LinesCall
from longpoint.solvers.called_solver import CalledSolver, SolverCall
from longpoint.solvers.called_weighing import CalledWeigher
from longpoint.speech.tongue import Tongue
from longpoint.survey.house import Dialect


class Doubles(Protocol):
    """A typed array as it comes across: asked for it, it gives its numbers."""

    def to_py(self) -> Sequence[float]:
        """Return them."""
        ...


def ports_of(solve: SolverCall, tally: LinesCall, weigh: Callable[..., Doubles]) -> Ports:
    """Return the core's ports with the page's engines behind them."""
    weigher = CalledWeigher(lambda *given: weigh(*given).to_py())
    return Ports(
        solver=CalledSolver(solve),
        imagined=Imagined(engine=CalledLines(tally), weigh=weigher),
        code_modules=code_modules,
        tongue=tongue,
    )


def made(
    solve: SolverCall, tally: LinesCall, weigh: Callable[..., Doubles]
) -> Callable[[str], str]:
    """Return what answers the page's requests."""
    ports = ports_of(solve, tally, weigh)
    return lambda request: answer(request, ports)


@cache
def tongue(dialect: Dialect) -> Tongue:
    """Return the English of a house's country."""
    words = files("longpoint.speech") / "words"
    return country_tongue(dialect, lambda name: (words / f"{name}.mo").read_bytes())


def code_modules(text: str) -> tuple[bytearray, ...]:
    """Return the squares of a code; a small one would be refused by most phones."""
    from segno.encoder import encode

    return encode(text, error="m", micro=False, boost_error=False).matrix
