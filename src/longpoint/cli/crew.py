"""`longpoint crew`: which phones share with this laptop, and what happened."""

from datetime import UTC, datetime
from pathlib import Path

import click

from longpoint.cli.crew_extra import refuse_without_extra
from longpoint.cli.outcome import Outcome, exits
from longpoint.cli.spoken import speak
from longpoint.cli.store_options import store_option
from longpoint.cli.store_places import StorePlace
from longpoint.errors import ExchangeError
from longpoint.exchange.safe_files import refuse_existing, write_new_text
from longpoint.speech.said import joined, say


@click.group(name="crew")
def command() -> None:
    """See which phones share with this laptop, put one out, look back."""


@command.command(name="list")
@store_option
@exits
def list_devices(store: StorePlace) -> Outcome:
    """List the phones that were let in."""
    refuse_without_extra()
    from longpoint.cli.crew_folder import crew_folder, load_members

    members = load_members(crew_folder(store))
    if not members:
        speak(say("No phone was let in yet: `longpoint serve` shows the code."))
    for each in members:
        state = "OUT" if each.is_out else say("until {day}", day=_day(each.until_s))
        shared = (
            say("last shared {day}", day=_day(each.shared_s))
            if each.shared_s
            else say("never shared")
        )
        speak(f"{each.device[:12]:<12}  {each.name}: {state}, {shared}")
    return Outcome.DONE


@command.command(name="out")
@click.argument("name")
@store_option
@exits
def put_out(name: str, store: StorePlace) -> Outcome:
    """Put a phone out, by its name or the beginning of its key; at once, also while serving.

    What it has shared stays here, and what is on it stays on it.
    """
    refuse_without_extra()
    import time

    from longpoint.cli.crew_folder import AuditLog, crew_folder, load_members, save_members
    from longpoint.serve.crew.members import Members

    folder = crew_folder(store)
    there = load_members(folder)
    found = [m for m in there if m.name == name] or [m for m in there if m.device.startswith(name)]
    if len(found) != 1:
        raise ExchangeError(
            say("{name!r} is to be put out.", name=name),
            say("{found} phones are called so.", found=len(found))
            if found
            else say("No phone is called so."),
            say("Look at `longpoint crew list`, and give its key."),
        )
    members = Members(lambda: load_members(folder), lambda m: save_members(folder, m), time.time)
    members.put_out(found[0].device)
    AuditLog(folder)("put-out", name=found[0].name, device=found[0].device)
    speak(say("{found} is out.", found=found[0].name))
    return Outcome.DONE


@command.command(name="log")
@store_option
@exits
def show_log(store: StorePlace) -> Outcome:
    """Show what happened: who knocked, came in, shared, was put out."""
    refuse_without_extra()
    from longpoint.cli.crew_folder import crew_folder, read_log

    for line in read_log(crew_folder(store)):
        facts = joined(", ", (f"{k} {v}" for k, v in line.items() if k not in ("at", "what")))
        speak(f"{line.get('at')}  {line.get('what')}: {facts}")
    return Outcome.DONE


@command.command(name="authority")
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option(
    "--anew",
    is_flag=True,
    help="Make a new authority, its key lost or stolen; every phone has to trust it anew.",
)
@store_option
@exits
def write_authority(file: Path, anew: bool, store: StorePlace) -> Outcome:
    """Write the certificate that phones are to trust to a FILE that isn't there yet."""
    refuse_without_extra()
    from longpoint.cli.crew_folder import AuditLog, crew_folder
    from longpoint.serve.authority import authority_anew, authority_file, fingerprint

    folder, now = crew_folder(store), datetime.now(UTC)
    refuse_existing(file)
    if anew:
        authority_anew(folder.path, now)
        AuditLog(folder)("authority-anew")
        speak(say("A new authority; what lay there before is set aside as .before-1 and so on."))
        speak(say("Every phone has to trust it anew. Begin `longpoint serve` again if it runs."))
    certificate = authority_file(folder.path, now).read_bytes()
    write_new_text(file, certificate.decode("ascii"))
    speak(
        say(
            "{file} is what phones are to trust: get it to the phone by cable or mail, and",
            file=file,
        )
    )
    speak(say("install it there as a CA certificate. It is good for private networks only."))
    speak(say("Compare its fingerprint before you do:"))
    speak(f"  {fingerprint(certificate)}")
    return Outcome.DONE


def _day(at_s: float) -> str:
    return datetime.fromtimestamp(at_s, UTC).date().isoformat()
