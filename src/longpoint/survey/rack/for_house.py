"""The offcuts of the rack that a house can use, as entries of its own file."""

from collections.abc import Mapping
from datetime import date

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import Units
from longpoint.speech.said import joined, say
from longpoint.survey.house import House
from longpoint.survey.house_file.written_numbers import number_text
from longpoint.survey.profiles import Profile
from longpoint.survey.rack.records import Rack, RackPiece

MOST_NAMED = 6


def with_rack(document: Mapping[str, object], house: House, rack: Rack) -> dict[str, object]:
    """Return a house file's document with the offcuts of the rack, the oldest first.

    Args:
        document: The document that the house was read from.
        house: The house.
        rack: The rack; sections that the house has no profile of are left out.
    """
    rows = [
        {
            "profile": profile.name,
            "length": _written(piece.length_mm, house.units),
            "label": piece.label,
        }
        for piece, profile in usable(house, rack)
    ]
    own = document.get("offcuts", [])
    if not isinstance(own, list | tuple):
        return dict(document)
    unlabelled = [row for row in own if not isinstance(row, Mapping) or "label" not in row]
    return {**document, "offcuts": [*rows, *unlabelled]}


def usable(house: House, rack: Rack) -> tuple[tuple[RackPiece, Profile], ...]:
    """Return what is on the rack of the house's profiles, the oldest first.

    What is no longer than the two cuts at its ends is left out.
    """
    profiles = {
        key: profile
        for key, section in rack.sections
        for profile in house.profiles
        if section.is_of(profile)
    }
    return tuple(
        (piece, profiles[piece.section])
        for piece in rack.there
        if piece.section in profiles and piece.length_mm > 2.0 * house.saw.kerf_mm
    )


def rack_findings(
    house: House, rack: Rack, today: date, old_after_days: int | None = None
) -> tuple[Finding, ...]:
    """Return what is to be said of the rack before a house is planned with it.

    Args:
        house: The house.
        rack: The rack.
        today: The day it is.
        old_after_days: From when on an offcut is old; None: as the rack says.
    """
    old_after_days = rack.old_after_days if old_after_days is None else old_after_days
    found = [*_other_sections(house, rack)]
    if old_after_days is not None:
        old = [p for p, _ in usable(house, rack) if p.age_days(today) > old_after_days]
        if old:
            found.append(_old(house, old, today, old_after_days))
    return tuple(found)


def _other_sections(house: House, rack: Rack) -> list[Finding]:
    """Say where a section has a profile's name and isn't the same timber."""
    return [
        Finding(
            code="rack-section-differs",
            severity=Severity.WARNING,
            place=house.name,
            read=say(
                "The rack's section {key} and the house's profile {profile} have "
                "one name: {size} and {size_2}.",
                key=key,
                profile=profile.name,
                size=_size(section.width_mm, section.thickness_mm, house.units),
                size_2=_size(profile.width_mm, profile.thickness_mm, house.units),
            ),
            wrong=say("Their sizes or edges differ, so no offcut of it is used here."),
            do=say("Mend the one that is wrong, or give the other section another name."),
        )
        for key, section in rack.sections
        for profile in house.profiles
        if section.name.casefold() == profile.name.casefold()
        and not section.is_of(profile)
        # A second section of that name may be the one that is meant.
        and not any(other.is_of(profile) for _, other in rack.sections)
    ]


def _old(house: House, old: list[RackPiece], today: date, old_after_days: int) -> Finding:
    named = joined(
        ", ",
        (
            say(
                "{label} ({length}, {age_days} days)",
                label=piece.label,
                length=format_with_unit(piece.length_mm, house.units),
                age_days=piece.age_days(today),
            )
            for piece in old[:MOST_NAMED]
        ),
    )
    more = say(" and {old} more", old=len(old) - MOST_NAMED) if len(old) > MOST_NAMED else ""
    one = len(old) == 1
    return Finding(
        code="offcut-old",
        severity=Severity.NOTE,
        place=house.name,
        read=say("On the rack: {named}{more}.", named=named, more=more),
        wrong=say(
            "{it} put up over {old_after_days} days ago; {it_2} used like any other.",
            it=say("It was") if one else say("They were"),
            old_after_days=old_after_days,
            it_2=say("it is") if one else say("they are"),
        ),
        do=say(
            "Look for twist, dents and paint before cutting, or throw away what is "
            "no good: longpoint rack take."
        ),
    )


def _size(width_mm: float, thickness_mm: float, units: Units) -> str:
    return say(
        "{width} x {thickness}",
        width=format_with_unit(width_mm, units),
        thickness=format_with_unit(thickness_mm, units),
    )


def _written(length_mm: float, units: Units) -> int | float | str:
    if units is Units.INCH:
        return say("{number} mm", number=number_text(length_mm))
    return int(length_mm) if float(length_mm).is_integer() else length_mm
