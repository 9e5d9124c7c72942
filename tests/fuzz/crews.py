"""Files that a crew keeps and edits: rack, rates, counts, finished work, figures, the saw."""

from functools import cache
from pathlib import Path
from typing import Final

from longpoint.exchange.crew_files import CrewFile, load_crew_file, save_crew_file
from longpoint.exchange.house_files import load_house, load_house_document
from longpoint.exchange.paper_files import load_rates
from longpoint.exchange.rack_files import load_rack, save_rack
from longpoint.exchange.saw_file import load_at_the_saw
from longpoint.forecast.built_frames import built_frames
from longpoint.forecast.learning.setup import Beforehand, Learned, learn
from longpoint.pipeline import check_house
from longpoint.pricing.counts_file import read_counts
from longpoint.pricing.job import counted_job
from longpoint.pricing.rates import Rates
from tests.fuzz.refusing import refused_or_read

RATES: Final = Path(__file__).parents[2] / "examples" / "rates.toml"


def rack(data: bytes) -> bool:
    """A rack; what is read is written again and read as the same."""

    def work(path: Path) -> None:
        found = load_rack(path)
        save_rack(path, found, found)
        assert load_rack(path) == found

    return refused_or_read(work, data, ".toml")


def rates(data: bytes) -> bool:
    """A file of rates."""
    return refused_or_read(load_rates, data, ".toml")


def counts(data: bytes) -> bool:
    """A house before its walls are lined, and the job that it makes."""

    def work(path: Path) -> None:
        counted_job(read_counts(load_house_document(path)), _rates())

    return refused_or_read(work, data, ".toml")


@cache
def _rates() -> Rates:
    return load_rates(RATES)


def finished(data: bytes) -> bool:
    """A house with what was read of its frames once they were up, and what is learned of it."""

    def work(path: Path) -> None:
        survey = load_house(path)
        frames = built_frames(survey.house, check_house(survey)[0])
        learn(frames, Learned(), Beforehand(feeler_mm=survey.house.crew.feeler_mm))

    return refused_or_read(work, data, ".toml")


def crew(data: bytes) -> bool:
    """A crew's own figures; what is read is written again and read as the same."""

    def work(path: Path) -> None:
        found = load_crew_file(path)
        other = path.with_name("b.json")
        save_crew_file(other, CrewFile(), found)
        again = load_crew_file(other)
        assert (again.learned, again.forecasts) == (found.learned, found.forecasts)

    return refused_or_read(work, data, ".json")


def saw(data: bytes) -> bool:
    """Where the cutting stands."""
    return refused_or_read(load_at_the_saw, data, ".json")


TARGETS: Final = {
    "rack": rack,
    "rates": rates,
    "counts": counts,
    "finished": finished,
    "crew": crew,
    "saw": saw,
}
"""Each by its name."""
