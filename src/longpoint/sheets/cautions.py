"""What stands at the foot of a sheet so that nobody is hurt.

Our own words. They set no limit: the law of the place and the instructions of the tool do.

References:
    Cables run straight up, down and across from switches and sockets, along wall corners and wall
    tops: the safe zones of BS 7671, 522.6.202, from memory. Guard, run-down and clamping: the
    health and safety regulator's leaflets on chop saws, read in part. Nailers: the public-domain
    guide of NIOSH and OSHA as reported, read. Old paint: United States 40 CFR 745, 1978, read; the
    years of other countries, and of boards with asbestos, from memory and to be cautious by only.
"""

from collections.abc import Iterable
from typing import Final

from longpoint.fixing.wall_behind import country_of
from longpoint.pieces.piece import Piece
from longpoint.quantities.length import Units
from longpoint.sheets.cut_sheet import SHORT_PIECE_MM
from longpoint.speech.said import joined, say
from longpoint.survey.house import Dialect, House

_DEFER = say(
    "The rules of the place and the instructions of the tool come first; this list "
    "is not all there is to know."
)


def saw_cautions(pieces: Iterable[Piece], units: Units) -> tuple[str, ...]:
    """Return what to mind at the saw, with the short pieces by name."""
    short = [piece.mark for piece in pieces if piece.long_mm < SHORT_PIECE_MM]
    limit = say("150 mm") if units is Units.MM else say("6 in")
    named = say(" Here: {short}.", short=joined(", ", short)) if short else ""
    return (
        say(
            "Eyes and ears covered. Guard on and working; hold or clamp the piece; let "
            "the blade stop before you reach in or lift it."
        ),
        say(
            "Never hold a short piece at the blade: cut those under {limit} off a "
            "longer stick (our choice, no source).{named}",
            limit=limit,
            named=named,
        ),
        say("Dust of MDF and of hardwood harms the lungs: extract it and wear a mask that fits."),
        _DEFER,
    )


def common_cautions() -> tuple[str, ...]:
    """Return what to mind in all of the work, for sheets that are read before it starts."""
    return (
        say(
            "At the saw: guard on, eyes and ears covered, no short piece held by hand, "
            "dust drawn off. On the wall: look for cables and pipes before nailing; "
            "old paint may hold lead."
        ),
        _DEFER,
    )


def fixing_cautions() -> tuple[str, ...]:
    """Return what to mind when pieces go on the wall."""
    return (
        say(
            "Look for cables and pipes before nailing: above, below and beside every "
            "switch and socket, in corners and at wall tops. Nails by a door are often "
            "right there."
        ),
        say(
            "Old paint may hold lead: test it or treat it as lead before sanding or "
            "pulling old trim."
        ),
        _DEFER,
    )


OLD_PAINT_BEFORE: Final = {
    Dialect.US: 1978,
    Dialect.CA: 1978,
    Dialect.NZ: 1980,
    Dialect.AU: 1970,
    Dialect.UK: 1970,
    Dialect.IE: 1970,
}
"""A house older than that is taken to have lead in its paint; a younger one isn't cleared by it."""
OLD_BOARDS_BEFORE: Final = 1990


def nailing_cautions(house: House) -> tuple[str, ...]:
    """Return what to mind when nails are driven, for the country and age of the house."""
    return (
        say(
            "Scan for cables and pipes before each wall: take what runs above, below "
            "and beside every switch and socket, corners, wall tops and the floor line "
            "as live or full. Trim round a door stands right there: the shortest nail "
            "that holds."
        ),
        say(
            "Nailer: full sequential trigger, free hand well clear, nose square on the "
            "work, no nail into a knot, a plate or near an end, none toward glass or "
            "toward anybody. Air or battery off before you clear a jam."
        ),
        say(
            "Eyes and ears covered. Dust of MDF and of hardwood harms the lungs: draw "
            "it off and wear a mask that fits; the limit in force where you work is "
            "for your authority to say."
        ),
        *_old_house(house),
        _DEFER,
    )


def _old_house(house: House) -> tuple[str, ...]:
    built = house.fixing.built
    paint = OLD_PAINT_BEFORE[country_of(house)]
    said = []
    if built is None or built < paint:
        age = say("of unknown age") if built is None else say("of {built}", built=built)
        said.append(
            say(
                "A house {age}: old paint may hold lead. Test it or treat it as lead "
                "before sanding, scraping or pulling old trim; who may do that work "
                "for pay is for the law to say.",
                age=age,
            )
        )
    if built is None or built < OLD_BOARDS_BEFORE:
        said.append(
            say(
                "Old wall boards, textured coatings and packings may hold asbestos: "
                "have them looked at before you nail, drill or sand."
            )
        )
    return tuple(said)


def painting_cautions(house: House) -> tuple[str, ...]:
    """Return what to mind when holes are filled, sanded and painted."""
    return (
        say(
            "Sand with the dust drawn off and a mask that fits; keep heat and flame "
            "from solvents, and air the room."
        ),
        *_old_house(house),
        _DEFER,
    )
