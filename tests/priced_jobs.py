"""Counts, rates and houses of our own, for tests of money."""

import tomllib
from datetime import date
from pathlib import Path
from typing import Any

from longpoint.pipeline import plan_house
from longpoint.pricing.counts_file import read_counts
from longpoint.pricing.job import Job, counted_job, read_job
from longpoint.pricing.quote import Quote, make_quote
from longpoint.pricing.rates import Rates
from longpoint.pricing.rates_file import read_rates
from longpoint.pricing.take_off import Limits
from longpoint.quantities.length import Units
from longpoint.survey.house_file import read_house
from tests.house_documents import house, window

EXAMPLES = Path(__file__).parents[1] / "examples"
TODAY = date(2026, 3, 2)
NESTS = 2
JOBS = 200

STOCK = [
    {"profile": "OG57", "length": 5400, "price": 15.20},
    {"profile": "OG57", "length": 4200, "price": 11.90},
    {"profile": "SK95", "length": 5400, "price": 21.60},
]
OUR_RATES = {
    "format": "longpoint-rates/1",
    "crew": "Two Benches Joinery",
    "currency": "GBP",
    "hour": 38,
    "margin": 15,
    "sure": 0.8,
    "tax": {"name": "VAT", "percent": 20},
    "hours": {"window_four_sides": [0.5, 0.7, 1.1]},
}
OUR_COUNTS = {
    "format": "longpoint-counts/1",
    "name": "Plover House",
    "defaults": {"architrave": "OG57", "skirting": "SK95", "quirk": 5},
    "profiles": {"OG57": {"face": 57, "thickness": 18}, "SK95": {"face": 95, "thickness": 16}},
    "stock": STOCK,
    "windows": [{"count": 3, "room": "Kitchen", "width": 1187, "height": 462}],
    "doors": [{"width": 764, "height": 2030}],
    "skirting": [{"room": "Kitchen", "length": 9000, "internal": 3, "external": 1}],
}


def rates(**changes: Any) -> Rates:  # noqa: ANN401
    """Return rates, some of their keys changed; a key that is None is left out."""
    document = {**OUR_RATES, **changes}
    return read_rates({key: value for key, value in document.items() if value is not None})


def counted(crew: Rates | None = None, **changes: Any) -> Job:  # noqa: ANN401
    """Return a small job from counts."""
    counts = read_counts({**OUR_COUNTS, **changes})
    return counted_job(counts, crew, nests=NESTS, jobs=JOBS)


def as_read(
    *openings: dict[str, Any],
    crew: Rates | None = None,
    running_units: Units | None = None,
    limits: Limits | None = None,
    **changes: Any,  # noqa: ANN401
) -> Job:
    """Return the job of a house as read."""
    document = house(openings=list(openings) or [window()], stock=STOCK, **changes)
    plan = plan_house(read_house(document))
    return read_job(
        plan.house,
        plan.shapes,
        plan.pieces,
        crew,
        held=plan.held,
        running_units=running_units,
        limits=limits,
        nests=NESTS,
        jobs=JOBS,
    )


def quoted(job: Job, **changes: Any) -> Quote:  # noqa: ANN401
    """Return a quote on a job."""
    assert job.rates is not None
    facts: dict[str, Any] = {
        "number": "Q-7",
        "day": TODAY,
        "made_from": job.made_from,
        "is_read": job.is_read,
        "exclusions": ("painting",),
        "held": job.held,
        **changes,
    }
    return make_quote(job.estimate, job.tasks, job.house, job.rates, **facts)


def example(name: str) -> dict[str, Any]:
    """Return an example file as parsed."""
    return tomllib.loads((EXAMPLES / name).read_text(encoding="utf-8"))
