"""By whom and how often a house is imagined for its forecast: the quickest engine there is."""

from typing import Final

from longpoint.forecast.chances import DRAWS, Imagined
from longpoint.forecast.plain_lines import PlainLines
from longpoint.solvers.numpy_lines import NumpyLines
from longpoint.solvers.numpy_weighing import numpy_weighed_lines

PLAIN_DRAWS: Final = 2_000
"""Without numpy a house is imagined less often: chances are then within a hundredth or so."""


def house_imagined(draws: int | None = None) -> Imagined:
    """Return how a house is to be imagined.

    Args:
        draws: How many houses; None: as many as take no more than a breath.
    """
    if NumpyLines.is_installed():
        try:
            return Imagined(engine=NumpyLines(), weigh=numpy_weighed_lines, draws=draws or DRAWS)
        except ImportError:
            # Installed, but broken: the plain engine does as well, only slower.
            pass
    return Imagined(engine=PlainLines(), draws=draws or PLAIN_DRAWS)
