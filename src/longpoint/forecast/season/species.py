"""From what somebody wrote of a profile's material to the timber that moves."""

import re
from typing import Final

from longpoint.forecast.season.coefficients import Coefficient, Species, Standing
from longpoint.forecast.season.timbers import EUROPEAN_REDWOOD, MDF, TIMBERS

__all__ = ["EUROPEAN_REDWOOD", "MDF", "TIMBERS", "Coefficient", "Species", "Standing", "species_of"]


def species_of(material: str) -> Species | None:
    """Return the timber or board that a material names, if it is a known one.

    The order of the words, capitals, signs and sizes don't matter, nor do words on finish and
    grade. Any other word that isn't part of a timber's name leaves it unknown: Tasmanian oak is no
    oak, and a plywood with an oak face doesn't move like oak. Whatever has MDF in it moves like
    MDF, also under a veneer.

    Args:
        material: As written in the house file; may be empty.

    Returns:
        The timber; None where it isn't known, and then the caller says what is assumed.

    Example:
        >>> species_of("Pine, primed (radiata)").name
        'radiata pine'
        >>> species_of("oak-veneered MDF, 18 mm").name
        'MDF'
        >>> species_of("Tasmanian oak") is None
        True
    """
    words = _words(material)
    if "mdf" in words:
        return MDF
    return _BY_WORDS.get(words) or _BY_WORDS.get(words - _SAYS_NOTHING)


def _words(text: str) -> frozenset[str]:
    parts = re.findall(r"[^\W_]+", text.casefold())
    return frozenset(p for p in parts if p.isalpha() and p not in {"mm", "in", "inch", "x"})


_BY_WORDS: Final = {
    _words(name): species for species in TIMBERS for name in (species.name, *species.aliases)
}

_SAYS_NOTHING: Final = _words(
    "primed preprimed pre painted prepainted unfinished raw oiled lacquered stained varnished "
    "finger fingerjointed jointed joint fj laminated edge clear select selected prime solid "
    "knotty knot free grade a kiln dried kd planed par dar dressed moulding trim architrave "
    "skirting timber wood hardwood softwood"
)
"""Words on finish, grade and use that don't change the timber."""
