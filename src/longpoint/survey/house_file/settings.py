"""What the whole house shares: defaults and tools, as far as they can be used."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Final

from longpoint.errors import Severity
from longpoint.speech.said import say
from longpoint.survey.crew import Crew
from longpoint.survey.fixing import FixingSetup
from longpoint.survey.handover import Defect, Handover
from longpoint.survey.house_file.crew import read_crew
from longpoint.survey.house_file.default_tables import DEFAULTS
from longpoint.survey.house_file.entry import as_list, as_table, read_entry
from longpoint.survey.house_file.fixing import read_fixing
from longpoint.survey.house_file.handover import read_defects, read_handover
from longpoint.survey.house_file.keys import SIDES
from longpoint.survey.house_file.named_tables import Named
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.season import read_seasons
from longpoint.survey.house_file.sticks import read_offcuts, read_stock
from longpoint.survey.house_file.tools import (
    ASSUMED_SAW,
    assumed_tape,
    read_profiles,
    read_saws,
    read_tapes,
)
from longpoint.survey.house_file.trouble import HouseFileTrouble, nearest, quoted
from longpoint.survey.instruments import Saw, Tape
from longpoint.survey.profiles import Offcut, Profile, Stock
from longpoint.survey.season import HouseSeasons


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Defaults and tools of a house.

    Attributes:
        remarks: What is said about the house.
        defaults: Values of the defaults that can be used.
        spoiled: Keys of the defaults that are written but can't be used.
        profiles: Profiles by name.
        tapes: Tapes by name.
        tape_name: Name of the default tape; empty when the one named can't be used.
        saw_tape: Name of the tape that marks at the saw; empty: the default tape.
        saw: The saw in use.
        crew: What the crew says of itself.
        seasons: Air around the trim.
        fixing: What is told of nails and of the wall behind the trim.
        handover: What is told of handing over.
        defects: What was found wrong.
        stock: Sticks that can be bought.
        offcuts: Sticks on the rack.
    """

    remarks: Remarks
    defaults: dict[str, Any]
    spoiled: frozenset[str]
    profiles: Named[Profile]
    tapes: Named[Tape]
    tape_name: str
    saw_tape: str
    saw: Saw
    crew: Crew
    seasons: HouseSeasons
    fixing: FixingSetup
    handover: Handover
    defects: tuple[Defect, ...]
    stock: tuple[Stock, ...]
    offcuts: tuple[Offcut, ...]

    def default(self, key: str) -> Any:  # noqa: ANN401
        """Return a default, None if it isn't given.

        Raises:
            HouseFileTrouble: It is written in a way that can't be used.
        """
        if key in self.spoiled:
            raise HouseFileTrouble(
                say("{key} is to come from [defaults].", key=key),
                say("What is written for it there can't be used."),
                say("Put {key} right under [defaults], or write it here.", key=key),
                code="default-unreadable",
            )
        return self.defaults.get(key)

    def all_tapes(self) -> tuple[Tape, ...]:
        """Return every tape, the default first."""
        first = [tape for tape in self.tapes.known.values() if tape.name == self.tape_name]
        rest = [tape for tape in self.tapes.known.values() if tape.name != self.tape_name]
        return (*first, *rest) or (assumed_tape(self.remarks.units),)


def read_settings(document: Mapping[object, object], remarks: Remarks) -> Settings:
    """Return what the whole house shares.

    Args:
        document: The house file as parsed.
        remarks: Where to say what is assumed and what can't be used.

    Raises:
        HouseFileTrouble: A table of the house is no table at all.
    """
    profiles = read_profiles(as_table(document.get("profiles", {}), "profiles"), remarks)
    tapes = read_tapes(as_table(document.get("tapes", {}), "tapes"), remarks)
    saws = read_saws(as_table(document.get("saws", {}), "saws"), remarks)
    defaults, spoiled = _read_defaults(
        as_table(document.get("defaults", {}), "defaults"), profiles, remarks
    )
    tape_name = _default_tape(defaults, spoiled, tapes, remarks)
    saw_tape = _saw_tape(defaults, tapes, remarks)
    saw = _default_saw(defaults, spoiled, saws, remarks)
    has_openings = bool(document.get("openings"))
    return Settings(
        remarks=remarks,
        defaults=defaults,
        spoiled=frozenset(spoiled),
        profiles=profiles,
        tapes=tapes,
        tape_name=tape_name,
        saw_tape=saw_tape,
        saw=saw,
        crew=read_crew(document.get("crew"), remarks, is_needed=has_openings),
        seasons=read_seasons(document.get("season"), remarks, is_needed=has_openings),
        fixing=read_fixing(document.get("fixing"), remarks),
        handover=read_handover(document.get("handover"), remarks),
        defects=read_defects(as_list(document.get("defects", []), "defects"), remarks),
        stock=read_stock(as_list(document.get("stock", []), "stock"), profiles, saw, remarks),
        offcuts=read_offcuts(
            as_list(document.get("offcuts", []), "offcuts"), profiles, saw, remarks
        ),
    )


_HELD: Final = say("Every opening, room and run that takes it from there is held.")
_MARKS_TOO: Final = say("The tape that read the house is taken to mark at the saw as well.")
_LEFT_OUT: Final = {
    "saw": say("The sticks are planned with an assumed saw."),
    "saw_tape": _MARKS_TOO,
    "floor_gap": say("It is taken as if it weren't there."),
    "max_run": say("It is taken as if it weren't there."),
}


def _read_defaults(
    written: Mapping[object, object], profiles: Named[Profile], remarks: Remarks
) -> tuple[dict[str, Any], set[str]]:
    entry = read_entry(DEFAULTS, written, remarks.units, "defaults.")
    spoiled = set(entry.spoiled(DEFAULTS))
    values = {key: value for key, value in entry.values.items() if key not in spoiled}
    for trouble in entry.troubles:
        known = DEFAULTS.by_name
        key = trouble.key if trouble.key in known else nearest(trouble.key, known)
        remarks.trouble(trouble, _LEFT_OUT.get(key, _HELD), code="default-unreadable")
    for key, name in [
        *((key, values[key]) for key in ("skirting", "board") if key in values),
        *(("architrave", name) for name in dict.fromkeys(values.get("architrave", {}).values())),
    ]:
        try:
            profiles.get(name, f"defaults.{key}")
        except HouseFileTrouble as trouble:
            remarks.trouble(trouble, _HELD, code=trouble.code)
            spoiled.add(key)
    if _outside(values):
        spoiled.add("quirk_band")
        remarks.house_wide(
            Severity.STOP,
            code="default-unreadable",
            read=say("defaults.quirk_band does not hold the quirk of [defaults]."),
            wrong=say("A trim set as planned would be refused. {held}", held=_HELD),
            do=say("Widen the band, or change the quirk."),
        )
    return {key: value for key, value in values.items() if key not in spoiled}, spoiled


def _outside(values: dict[str, Any]) -> bool:
    if not {"quirk", "quirk_band"} <= values.keys():
        return False
    least_mm, most_mm = values["quirk_band"]
    return any(not least_mm <= values["quirk"].get(side, least_mm) <= most_mm for side in SIDES)


def _default_tape(
    defaults: dict[str, Any], spoiled: set[str], tapes: Named[Tape], remarks: Remarks
) -> str:
    if "tape" in spoiled:
        return ""
    if "tape" in defaults:
        try:
            return tapes.get(defaults["tape"], "defaults.tape").name
        except HouseFileTrouble as trouble:
            remarks.trouble(trouble, _HELD, code=trouble.code)
            spoiled.add("tape")
            return ""
    if tapes.spoiled and not tapes.known:
        spoiled.add("tape")
        return ""
    if not tapes.known:
        tape = assumed_tape(remarks.units)
        tapes.known[tape.name] = tape
        remarks.house_wide(
            Severity.NOTE,
            code="tape-assumed",
            read=say("No tape is described."),
            wrong=say(
                "A class II tape read to {resolution} is assumed.",
                resolution=remarks.tell(tape.resolution_mm),
            ),
            do=say("Read the class off the blade and describe the tape under [tapes]."),
        )
        return tape.name
    _say_first("tape", tapes.known, remarks, code="tape-assumed")
    return next(iter(tapes.known))


def _saw_tape(defaults: dict[str, Any], tapes: Named[Tape], remarks: Remarks) -> str:
    if "saw_tape" not in defaults:
        return ""
    try:
        return tapes.get(defaults["saw_tape"], "defaults.saw_tape").name
    except HouseFileTrouble as trouble:
        remarks.trouble(trouble, _MARKS_TOO, code=trouble.code)
        return ""


def _default_saw(
    defaults: dict[str, Any], spoiled: set[str], saws: dict[str, Saw], remarks: Remarks
) -> Saw:
    if "saw" in spoiled:
        saw = Saw(name=ASSUMED_SAW, assumed=True)
    elif "saw" in defaults and defaults["saw"] in saws:
        saw = saws[defaults["saw"]]
    elif "saw" in defaults:
        saw = Saw(name=ASSUMED_SAW, assumed=True)
        remarks.house_wide(
            Severity.STOP,
            code="saw-unknown",
            read=say("defaults.saw names {defaults}.", defaults=quoted(defaults["saw"])),
            wrong=say(
                "No saw of that name can be used, so the sticks are planned with "
                "a kerf of {kerf} and an end trim of {end_trim}.",
                kerf=remarks.tell(saw.kerf_mm),
                end_trim=remarks.tell(saw.end_trim_mm),
            ),
            do=say("Name a saw that is described under [saws], or describe this one."),
        )
    elif saws:
        _say_first("saw", saws, remarks, code="saw-assumed")
        saw = next(iter(saws.values()))
    else:
        saw = Saw(name=ASSUMED_SAW, assumed=True)
        remarks.house_wide(
            Severity.NOTE,
            code="saw-assumed",
            read=say("No saw is described."),
            wrong=say(
                "A kerf of {kerf} and an end trim of {end_trim} are assumed, and "
                "its 45s are not proved.",
                kerf=remarks.tell(saw.kerf_mm),
                end_trim=remarks.tell(saw.end_trim_mm),
            ),
            do=say("Measure the kerf on a test cut and describe the saw under [saws]."),
        )
    if not saw.is_proved and not saw.assumed:
        remarks.house_wide(
            Severity.NOTE,
            code="saw-not-proved",
            read=say(
                "The saw {saw} is described without what its 45s really give.",
                saw=quoted(saw.name),
            ),
            wrong=say("Both swings are taken as 45 within what a saw is usually out by."),
            do=say(
                "Cut a test frame from offcuts and write found under [saws.{saw}].",
                saw=saw.name,
            ),
        )
    return saw


def _say_first(kind: str, names: Iterable[str], remarks: Remarks, *, code: str) -> None:
    first, *others = names
    if others:
        remarks.house_wide(
            Severity.NOTE,
            code=code,
            read=say(
                "{others} {kind}s are described, and [defaults] names none.",
                others=len(others) + 1,
                kind=kind,
            ),
            wrong=say("The first one, {first}, is taken.", first=quoted(first)),
            do=say("Write {kind} under [defaults].", kind=kind),
        )
