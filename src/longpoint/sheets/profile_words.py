"""A profile in words."""

from longpoint.quantities.formatting import format_length, format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.profiles import Profile


def section_words(profile: Profile | None, units: Units) -> str:
    """Return a profile's section and what it is made of; empty where it isn't known.

    Example:
        >>> section_words(
        ...     Profile(name="OG57", width_mm=57, thickness_mm=18, material="pine"), Units.MM
        ... )
        '57 x 18 mm pine'
    """
    if profile is None:
        return ""
    size = say("{width} x ", width=format_length(profile.width_mm, units))
    size += format_with_unit(profile.thickness_mm, units)
    return say("{size} {material}", size=size, material=profile.material).strip()
