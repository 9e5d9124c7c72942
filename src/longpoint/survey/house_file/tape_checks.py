"""Say what is known to be wrong with a tape, and what that means at the saw."""

from longpoint.errors import Severity
from longpoint.speech.said import joined, say
from longpoint.survey.house_file.remarks import Remarks
from longpoint.survey.house_file.trouble import quoted
from longpoint.survey.instruments import Tape


def say_take_off(tape: Tape, remarks: Remarks) -> None:
    """Say that an offset was taken off each reading of a tape."""
    if tape.take_off_mm == 0:
        return
    more, done = ("more", say("taken off")) if tape.take_off_mm > 0 else ("less", say("added to"))
    remarks.house_wide(
        Severity.NOTE,
        code="taken-off",
        read=say(
            "The tape {tape} is said to read {take_off} {more} than there is between two faces.",
            tape=quoted(tape.name),
            take_off=remarks.tell(abs(tape.take_off_mm)),
            more=more,
        ),
        wrong=say(
            "That was {done} each of its readings; the written figures are kept beside.",
            done=done,
        ),
        do=say(
            "Check it on the stick before cutting; change take_off under [tapes.{tape}].",
            tape=tape.name,
        ),
    )


def say_check(tape: Tape, remarks: Remarks) -> None:
    """Warn when a tape differs from the stick it was checked on by more than half its step."""
    stick_mm = tape.check_stick_mm
    if stick_mm is None:
        return
    said = []
    inside_off_mm = 0.0
    if tape.check_inside_mm is not None:
        inside_off_mm = tape.check_inside_mm - tape.take_off_mm - stick_mm
        if abs(inside_off_mm) > tape.resolution_mm / 2:
            said.append(say("{over} between two faces", over=_over(inside_off_mm, remarks)))
    if tape.check_outside_mm is not None:
        outside_off_mm = tape.check_outside_mm - stick_mm
        if abs(outside_off_mm) > tape.resolution_mm / 2:
            said.append(
                say(
                    "{over} hooked over the end",
                    over=_over(outside_off_mm, remarks),
                )
            )
    if not said:
        return
    off_mm = tape.take_off_mm + inside_off_mm
    remarks.house_wide(
        Severity.WARNING,
        code="tape-off",
        read=say(
            "On a stick of {stick} the tape {tape} shows {said}.",
            stick=remarks.tell(stick_mm),
            tape=quoted(tape.name),
            said=joined(say(" and "), said),
        ),
        wrong=say(
            "An error that is the same in reading and in marking cancels, so "
            "nothing was taken off for it; any difference between the two goes "
            "into every length."
        ),
        do=say(
            "Mark and cut with this same tape, used the same way, or write take_off "
            "= {off} under [tapes.{tape}].",
            off=quoted(remarks.tell(off_mm)),
            tape=tape.name,
        ),
    )


def _over(off_mm: float, remarks: Remarks) -> str:
    return say(
        "{off} too {much}",
        off=remarks.tell(abs(off_mm)),
        much=say("much") if off_mm > 0 else say("little"),
    )
