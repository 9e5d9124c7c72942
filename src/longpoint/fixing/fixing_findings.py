"""What is to be said of nails before any is driven."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from longpoint.errors import Finding, Severity
from longpoint.fixing.gauges import diameters_mm, is_off_gauge, thickest_mm
from longpoint.fixing.nail_lines import (
    FRAMING,
    PUNCHED_MM,
    Into,
    NailLine,
    Standing,
    Trouble,
    into_words,
)
from longpoint.fixing.nailing import Nailing, Section
from longpoint.quantities.formatting import format_with_unit
from longpoint.quantities.length import MM_PER_INCH, Units
from longpoint.speech.said import joined, raised, say
from longpoint.survey.fixing import Nail
from longpoint.survey.house import House

BRAD_GAUGE: Final = 18
"""From this gauge on a nail is a brad, meant for edges."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _OnLine:
    """What is wrong on one line of one section: the same on others is said with it.

    Attributes:
        code: Code of the finding.
        name: The nail in words; empty where none does.
        into: What the line goes into, in words.
        section: The section, in words.
        wrong: What is wrong there.
        do: What to do.
    """

    code: str
    name: str
    into: str
    section: str
    wrong: str
    do: str


def nail_findings(house: House, nailing: Nailing) -> tuple[Finding, ...]:
    """Return what is to be said of the nails that the crew has, and where none does.

    A nail that doesn't do on a line is named only where none of the crew's does: a nail that is
    too long for a lining may be right for the stud beside it. What is to be said of one nail, or of
    none, on such lines of several sections is said once.
    """
    alike: dict[tuple[str, str, str, str], list[_OnLine]] = {}
    for section in nailing.sections:
        for line in section.lines:
            for found in _line(house.units, section, line):
                key = (found.code, found.name, found.into, found.do)
                alike.setdefault(key, []).append(found)
    told = (_told(house, tuple(dict.fromkeys(each))) for each in alike.values())
    return tuple(dict.fromkeys((*_boxes(house), *told)))


def _told(house: House, alike: Sequence[_OnLine]) -> Finding:
    first = alike[0]
    sections = dict.fromkeys(each.section for each in alike)
    where = joined(say(" and "), sections)
    place = (
        say("on the line into the {words} of section {section}", words=first.into, section=where)
        if len(sections) == 1
        else say("on the lines into the {words} of sections {each}", words=first.into, each=where)
    )
    read = (
        say("{name} nails {place}.", name=raised(first.name), place=place)
        if first.name
        else say("No nail does {place}.", place=place)
    )
    return _finding(
        house,
        code=first.code,
        severity=Severity.WARNING,
        read=read,
        wrong=_wrong(alike),
        do=first.do,
    )


def _wrong(alike: Iterable[_OnLine]) -> str:
    """Return what is wrong, with the sections it is wrong in where that differs."""
    sections: dict[str, list[str]] = {}
    for each in alike:
        sections.setdefault(each.wrong, []).append(each.section)
    if len(sections) == 1:
        return next(iter(sections))
    return joined(
        " ",
        (
            say("Section {sections}: {wrong}", sections=joined(", ", here), wrong=wrong)
            for wrong, here in sections.items()
        ),
    )


def nail_words(nail: Nail, units: Units) -> str:
    """Return a nail as it is asked for, e.g. "16 gauge x 50 mm".

    Example:
        >>> nail_words(Nail(gauge=16, length_mm=63.5), Units.INCH)
        '16 gauge x 2 1/2 in'
    """
    return say(
        "{gauge} gauge x {length}",
        gauge=nail.gauge,
        length=format_with_unit(nail.length_mm, units),
    )


def _boxes(house: House) -> list[Finding]:
    said = []
    for nail in house.fixing.nails:
        name = nail_words(nail, house.units)
        if diameters_mm(nail.gauge) is None and nail.diameter_mm is None:
            said.append(
                _finding(
                    house,
                    code="nail-gauge-unknown",
                    severity=Severity.NOTE,
                    read=say("The crew has nails of {name}.", name=name),
                    wrong=say(
                        "What that gauge measures isn't held here, so it counts "
                        "as thick where it may come out and as thin where it has "
                        "to hold."
                    ),
                    do=say("Read the diameter off the box and write it behind the length."),
                )
            )
        if is_off_gauge(nail):
            said.append(
                _finding(
                    house,
                    code="nail-off-gauge",
                    severity=Severity.NOTE,
                    read=say(
                        "The crew has nails of {name}, {diameter} thick.",
                        name=name,
                        diameter=_diameter(nail, house.units),
                    ),
                    wrong=say(
                        "None of three old wire gauges makes that of the gauge; "
                        "the box is believed."
                    ),
                    do=say("Look at the box again."),
                )
            )
    return said


def _line(units: Units, section: Section, line: NailLine) -> list[_OnLine]:
    into = into_words(line.bed.into)
    here = say("{section} ({profile})", section=section.name, profile=section.profile)
    if line.standing is Standing.NONE:
        return [
            _OnLine(
                code="no-nail",
                name="",
                into=into,
                section=here,
                wrong=say("{why_none}.", why_none=raised(line.why_none)),
                do=say(
                    "Glue the back along that line and hold it with pins until the "
                    "glue is hard, or put in backing before the board goes on."
                ),
            )
        ]
    if line.standing is not Standing.OTHER or line.nail is None:
        return []
    instead = say("Use {instead}.", instead=nail_words(line.nail, units))
    return [
        _OnLine(
            code="nail-too-long" if trouble is Trouble.TOO_LONG else "nail-too-short",
            name=nail_words(nail, units),
            into=into,
            section=here,
            wrong=_too(units, line, nail, trouble),
            do=instead,
        )
        for nail, trouble in _meant_for(line)
    ]


def _too(units: Units, line: NailLine, nail: Nail, trouble: Trouble) -> str:
    if trouble is Trouble.TOO_LONG:
        most_mm = line.bed.most_mm(thickest_mm(nail))
        return say(
            "It is {by} too long: {comes_out}",
            by=_by(nail.length_mm - most_mm, units),
            comes_out=_comes_out(line),
        )
    return say(
        "It is {by} too short: only {hold} of it would hold.",
        by=_by(line.bed.least_mm - nail.length_mm, units),
        hold=format_with_unit(line.bed.hold_mm(nail), units),
    )


def _meant_for(line: NailLine) -> list[tuple[Nail, Trouble]]:
    """Return the nails that don't do on a line; a brad that nobody would drive there is left out.

    At a stud brads are named only where the crew has nothing thicker.
    """
    thick = [(nail, said) for nail, said in line.wrong if nail.gauge < BRAD_GAUGE]
    return thick if thick and line.bed.into in FRAMING else list(line.wrong)


def _by(length_mm: float, units: Units) -> str:
    """Return by how much; what is less than a mark of the tape is told as just that."""
    least_mm = 0.5 if units is Units.MM else MM_PER_INCH / 16.0
    return say("just") if length_mm < least_mm else format_with_unit(length_mm, units)


def _comes_out(line: NailLine) -> str:
    if line.bed.into is Into.LINING:
        return say("turned by the grain, it would come out of the reveal's face.")
    if line.bed.into in FRAMING:
        return say("it would come out behind the {into}.", into=into_words(line.bed.into))
    return say("punched {punched_mm:g} mm it would come out behind.", punched_mm=PUNCHED_MM)


def _diameter(nail: Nail, units: Units) -> str:
    diameter_mm = thickest_mm(nail)
    if units is Units.INCH:
        return say("{diameter_mm:.3f} in", diameter_mm=diameter_mm / MM_PER_INCH)
    return say("{diameter_mm:.2f} mm", diameter_mm=diameter_mm)


def _finding(
    house: House, *, code: str, severity: Severity, read: str, wrong: str, do: str
) -> Finding:
    return Finding(code=code, severity=severity, place=house.name, read=read, wrong=wrong, do=do)
