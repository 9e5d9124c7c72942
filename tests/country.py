"""The English of a house's country, as the shells load it."""

from importlib.resources import files

from longpoint.sheets.in_tongue import country_tongue
from longpoint.speech.tongue import Tongue
from longpoint.survey.house import Dialect


def english(dialect: Dialect) -> Tongue:
    """Return the English of a country."""
    words = files("longpoint.speech") / "words"
    return country_tongue(dialect, lambda name: (words / f"{name}.mo").read_bytes())
