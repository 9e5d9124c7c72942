"""Read profiles, tapes and saws; what can't be read spoils only what uses it."""

from collections.abc import Mapping
from typing import Any, Final, TypeVar

from longpoint.errors import Severity
from longpoint.quantities.length import Units
from longpoint.speech.said import say
from longpoint.survey.house_file.assumptions import END_TRIM, KERF
from longpoint.survey.house_file.entry import as_table, read_entry
from longpoint.survey.house_file.named_tables import Named, read_named
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.tape_checks import say_check, say_take_off
from longpoint.survey.house_file.tool_tables import (
    ASSUMED_END_TRIM_MM,
    ASSUMED_KEEP_MM,
    ASSUMED_KERF_MM,
    PROFILE,
    SAW,
    STEP_IN_INCHES_MM,
    STEP_MM,
    TAPE,
)
from longpoint.survey.house_file.trouble import HouseFileTrouble, quoted
from longpoint.survey.house_file.written_text import read_text
from longpoint.survey.instruments import Saw, SkirtingCut, Tape, TapeClass
from longpoint.survey.profiles import Profile

T = TypeVar("T")

ASSUMED_TAPE: Final = say("assumed tape")
ASSUMED_SAW: Final = say("assumed saw")


def read_profiles(written: Mapping[object, object], remarks: Remarks) -> Named[Profile]:
    """Return every profile that can be used."""

    def profile(name: str, values: dict[str, Any]) -> Profile:
        return Profile(
            name=name,
            width_mm=values["face"],
            thickness_mm=values["thickness"],
            reversible=values.get("reversible", False),
            grain_matched=values.get("grain_matched", False),
            material=values.get("material", ""),
            thin_edge_mm=_thin_edge(name, values),
            section=values.get("section", ()),
        )

    return read_named(
        PROFILE,
        "profile",
        written,
        remarks,
        profile,
        say("Everything that uses the profile is held, and its sticks are left out."),
        unknown_code="profile-unknown",
        unreadable_code="profile-unreadable",
    )


def _thin_edge(name: str, values: dict[str, Any]) -> float | None:
    thin_mm: float | None = values.get("thin_edge")
    if thin_mm is not None and thin_mm > values["thickness"]:
        raise HouseFileTrouble(
            say(
                "The profile {name} has a thin_edge that is thicker than its thickness.",
                name=quoted(name),
            ),
            say("Only its thinner edge is told so."),
            say("Write the edge's own thickness, or take it out."),
        )
    return thin_mm


def read_tapes(written: Mapping[object, object], remarks: Remarks) -> Named[Tape]:
    """Return every tape that can be used, and say what each check of a tape showed."""
    step_mm = STEP_IN_INCHES_MM if remarks.units is Units.INCH else STEP_MM

    def tape(name: str, values: dict[str, Any]) -> Tape:
        max_error_mm = values.get("max_error")
        written_class = values.get("class")
        if max_error_mm is not None and written_class is not None:
            raise HouseFileTrouble(
                say("The tape {name} is given a class and a max_error.", name=quoted(name)),
                say("Only one of them can tell what it may be out by."),
                say("Take one of them out."),
                code="keys-clash",
            )
        if max_error_mm is None and written_class is None:
            remarks.house_wide(
                Severity.NOTE,
                code="tape-class-assumed",
                read=say("The tape {name} is described without a class.", name=quoted(name)),
                wrong=say("Class II is assumed."),
                do=say(
                    'Read it off the blade and write class = "II" under [tapes.{name}].',
                    name=name,
                ),
            )
        check = values.get("check", {})
        if check and not check.keys() & {"inside", "outside"}:
            raise HouseFileTrouble(
                say("The check of the tape {name} gives the stick only.", name=quoted(name)),
                say("It doesn't say what the tape showed on it."),
                say("Write inside, outside or both beside stick."),
                code="missing-key",
            )
        return Tape(
            name=name,
            tape_class=None if max_error_mm is not None else TapeClass(written_class or "II"),
            max_error_mm=max_error_mm,
            resolution_mm=values.get("resolution", step_mm),
            take_off_mm=values.get("take_off", 0.0),
            check_stick_mm=check.get("stick"),
            check_inside_mm=check.get("inside"),
            check_outside_mm=check.get("outside"),
        )

    tapes = read_named(
        TAPE,
        "tape",
        written,
        remarks,
        tape,
        say("Everything read with this tape is held."),
        unknown_code="tape-unknown",
        unreadable_code="tape-unreadable",
    )
    for each in tapes.known.values():
        say_take_off(each, remarks)
        say_check(each, remarks)
    return tapes


def assumed_tape(units: Units) -> Tape:
    """Return the tape that stands in where none is described."""
    step_mm = STEP_IN_INCHES_MM if units is Units.INCH else STEP_MM
    return Tape(name=ASSUMED_TAPE, resolution_mm=step_mm, assumed=True)


def read_saws(written: Mapping[object, object], remarks: Remarks) -> dict[str, Saw]:
    """Return every saw; what can't be read of one is taken as if it weren't there, and said."""
    saws: dict[str, Saw] = {}
    for name, inner in written.items():
        try:
            text = read_text(name, say("The name of a saw"))
            table = as_table(inner, f"saws.{text}")
            entry = read_entry(SAW, table, remarks.units, f"saws.{text}.")
        except HouseFileTrouble as trouble:
            remarks.trouble(trouble, say("This saw is not used."), code="saw-unreadable")
            continue
        for each in entry.troubles:
            remarks.trouble(
                each,
                say("It is taken as if it weren't there, so check the saw."),
                code="saw-unreadable",
            )
        values = entry.values
        found = values.get("found", {})
        dialled = values.get("dialled", {})
        saws[text] = Saw(
            name=text,
            kerf_mm=values.get("kerf", ASSUMED_KERF_MM),
            end_trim_mm=values.get("end_trim", ASSUMED_END_TRIM_MM),
            found_left_deg=found.get("left"),
            found_right_deg=found.get("right"),
            keep_mm=values.get("keep", ASSUMED_KEEP_MM),
            skirting=SkirtingCut(values.get("skirting", "flat")),
            blade=values.get("blade", ""),
            setting=values.get("setting", ""),
            dialled_left_deg=dialled.get("left", 0.0),
            dialled_right_deg=dialled.get("right", 0.0),
        )
        for key, assumption in (("kerf", KERF), ("end_trim", END_TRIM)):
            if key not in table:
                remarks.assume(assumption)
    return saws
