"""What a proud or shy lining will do to an opening's joints, and the ways to mend it.

The forecast supposes linings in plane; a step that this alone takes past what it calls level is
said here.
"""

from typing import Final

from longpoint.errors import Finding, PieceError, Severity
from longpoint.pieces.face_trim import is_true_frame
from longpoint.pieces.proud_remedies import (
    SAID_FROM_MM,
    ProudCorner,
    edge_mm,
    face_plane,
    is_mitred,
    proud_corners,
    resting,
)
from longpoint.pieces.proud_ways import PROUD_WARNING_MM, ProudWays, listed
from longpoint.quantities.formatting import format_gap, format_length, format_unit
from longpoint.quantities.length import Units
from longpoint.shape.fitted import Shapes
from longpoint.speech.said import joined, say
from longpoint.survey.checks.plane import is_shy_all_round
from longpoint.survey.house import House
from longpoint.survey.openings import Flush, Joint, Layout, Method, Opening
from longpoint.survey.readings import Plane
from longpoint.trims.tilt import Opened, butt_opens_mm

PROUD: Final = "proud"
SHY: Final = "shy"

LEVEL_MM: Final = 0.5
"""Step between faces up to which the forecast counts them as level."""

_SQUARE: Final = (90.0, 90.0, 90.0, 90.0)


def check_proud(house: House, shapes: Shapes) -> tuple[Finding, ...]:
    """Return what the plane readings mean for the joints, opening by opening.

    Args:
        house: The house.
        shapes: Its fitted shapes; an opening without one is taken for square.

    Returns:
        A finding for what stands proud and one for what sits shy, of each face read.
    """
    return tuple(
        finding
        for opening in house.openings
        for is_second in (False, True)
        for finding in proud_findings(
            house, opening, _corner_deg(opening, shapes, is_second), is_second=is_second
        )
    )


def proud_findings(
    house: House,
    opening: Opening,
    corner_deg: tuple[float, ...] = _SQUARE,
    *,
    is_second: bool = False,
) -> tuple[Finding, ...]:
    """Return what one face's plane readings mean for its joints.

    Args:
        house: Gives profiles and units.
        opening: Its readings and settings.
        corner_deg: Angle at each corner, from bottom left anticlockwise, (4,). [deg]
        is_second: True for the second face.
    """
    plane = face_plane(opening, is_second=is_second)
    if plane is None:
        return ()
    figures = plane.corners_mm()
    proud = [i for i, mm in enumerate(figures) if mm >= SAID_FROM_MM]
    shy = [i for i, mm in enumerate(figures) if mm <= -SAID_FROM_MM]
    refused = ""
    corners: tuple[ProudCorner, ...] = ()
    try:
        corners = proud_corners(house, opening, plane, corner_deg, is_second=is_second)
    except PieceError as error:
        refused = say("{read} {wrong}", read=error.read, wrong=error.wrong)
    told = _Told(house=house, opening=opening, plane=plane, corners=corners, is_second=is_second)
    found = []
    if proud:
        found.append(told.proud(proud, refused))
    if shy and not is_shy_all_round(plane):
        found.append(told.shy(shy))
    return tuple(found)


def _corner_deg(opening: Opening, shapes: Shapes, is_second: bool) -> tuple[float, ...]:
    """Return a face's corners; 90s where all mitres are cut so, or no shape was fitted."""
    face = ("", "a") if not is_second else ("b",)
    fitted = [f for f in shapes.openings if f.mark == opening.mark and f.face in face]
    if is_true_frame(opening) or not fitted or len(fitted[0].corner_deg) != 4:
        return _SQUARE
    return tuple(fitted[0].corner_deg)


class _Told:
    """Puts one face's corners into words."""

    def __init__(
        self,
        *,
        house: House,
        opening: Opening,
        plane: Plane,
        corners: tuple[ProudCorner, ...],
        is_second: bool,
    ) -> None:
        self.house = house
        self.units: Units = house.units
        self.opening = opening
        self.plane = plane
        self.figures = plane.corners_mm()
        self.corners = corners
        self.is_second = is_second
        self._ways = ProudWays(opening=opening, plane=plane, corners=corners, units=house.units)

    def proud(self, at: list[int], refused: str) -> Finding:
        """Return what stands proud, what it opens, and the ways to mend it."""
        told = self._worst()
        most_mm = max((each.proud_mm for each in told), default=0.0)
        is_warning = most_mm >= PROUD_WARNING_MM or bool(refused)
        if self.opening.flush is not Flush.LEAVE:
            is_warning = False
        return Finding(
            code=PROUD,
            severity=Severity.WARNING if is_warning else Severity.NOTE,
            place=self.opening.mark,
            read=say(
                "{reveal} stands proud {listed} ({units}).",
                reveal=self._reveal(),
                listed=listed(self.figures, at, self.units),
                units=format_unit(self.units),
            ),
            wrong=refused or self._effect(told),
            do=self._ways.advice(told, at, is_refused=bool(refused)),
        )

    def shy(self, at: list[int]) -> Finding:
        """Return what sits shy, and what comes of nailing trim down on it."""
        return Finding(
            code=SHY,
            severity=Severity.NOTE,
            place=self.opening.mark,
            read=say(
                "{reveal} sits shy {listed} ({units}).",
                reveal=self._reveal(),
                listed=listed(self.figures, at, self.units),
                units=format_unit(self.units),
            ),
            wrong=say(
                "Trim that bridges the step shows it beside the lining, its "
                "joints closed{nailed_down}.",
                nailed_down=self._nailed_down(),
            ),
            do=say(
                "Pack behind the inner edge, as thick as the lining is shy (flush "
                "pack lists the packers), so that the nails don't pull the trim "
                "round; or take the wall's lining back behind the trim."
            ),
        )

    def _reveal(self) -> str:
        return say("On the second face the reveal") if self.is_second else say("The reveal")

    def _worst(self) -> tuple[ProudCorner, ...]:
        """Return the proud mitred corners worth figures: those that want work, or the worst."""
        proud = [each for each in self.corners if each.proud_mm > 0.0]
        most_mm = max((each.proud_mm for each in proud), default=0.0)
        least_mm = min(most_mm, PROUD_WARNING_MM)
        return tuple(reversed([each for each in proud if each.proud_mm >= least_mm]))

    def _effect(self, told: tuple[ProudCorner, ...]) -> str:
        if self.opening.method is Method.BENCH and is_mitred(self.opening):
            return say(
                "A frame joined on the bench keeps its joints, and stands off the wall there."
            )
        if not told:
            return self._without_mitres()
        opens = joined(
            "; ",
            (
                say(
                    "{each} {range} if one piece tilts, {range_2} if both do",
                    each=each.name,
                    range=self._range(each.one_opens()),
                    range_2=self._range(each.both_open()),
                )
                for each in told
            ),
        )
        return say(
            "Cut flat, the mitre will stand open at the face, toe to heel: {opens}{assumed}.{step}",
            opens=opens,
            assumed=self._assumed(told),
            step=self._step(told),
        )

    def _without_mitres(self) -> str:
        head = 2
        most_mm = max(self.figures[2:])
        if self.opening.joint is Joint.BUTT and most_mm >= SAID_FROM_MM:
            over = resting(self.house, self.opening, head, most_mm, is_second=self.is_second)
            legs = [
                resting(self.house, self.opening, side, 0.0, is_second=self.is_second)
                for side in (1, 3)
            ]
            thick_mm = max(leg.flat.thickness_mm for leg in legs)
            gap = format_gap(butt_opens_mm(over.tilted, thick_mm), self.units)
            return say(
                "The head tilts there: a leg's square end stands open {gap} at the face under it.",
                gap=gap,
            )
        what = say("legs") if self.opening.layout is not Layout.ALL_ROUND else say("pieces")
        return say("The {what} will tilt there; no mitre is touched.", what=what)

    def _range(self, opened: Opened) -> str:
        toe, heel = (format_gap(mm, self.units) for mm in opened[:2])
        return toe if toe == heel else say("{toe} to {heel}", toe=toe, heel=heel)

    def _assumed(self, told: tuple[ProudCorner, ...]) -> str:
        if self.opening.lining_edge_mm is not None or not told:
            return ""
        edge = format_length(edge_mm(self.opening), self.units)
        return say(
            " (the reveal's edge is assumed {edge} thick; less under a thinner one)",
            edge=edge,
        )

    def _step(self, told: tuple[ProudCorner, ...]) -> str:
        """Say what the faces step by, where it is more than the forecast calls level."""
        both_mm = max(each.step_mm() for each in told)
        alone_mm = max(each.step_alone_mm() for each in told)
        if alone_mm <= LEVEL_MM:
            return ""
        both = (
            say(" (both: {both})", both=format_gap(both_mm, self.units))
            if both_mm > LEVEL_MM
            else ""
        )
        return say(
            " Where one tilts alone, its face stands up to {alone} above the "
            "other's at the heel{both}; the forecast of level faces leaves this "
            "out.",
            alone=format_gap(alone_mm, self.units),
            both=both,
        )

    def _nailed_down(self) -> str:
        shy = [each for each in self.corners if each.proud_mm < 0.0 and max(each.both_open()) > 0.0]
        if not shy:
            return ""
        worst = max(shy, key=lambda each: each.both_open().most_behind_mm)
        one, both = worst.one_opens(), worst.both_open()
        behind = joined(
            "; ",
            (
                say(
                    "{most_behind} with {who}",
                    most_behind=format_gap(opened.most_behind_mm, self.units),
                    who=who,
                )
                for opened, who in ((one, say("one piece down")), (both, say("both")))
            ),
        )
        shown = format_gap(both.most_at_face_mm, self.units)
        return say(
            "; nailed down on the lining's edge, the mitre closes at the face "
            "first and gaps behind (up to {behind}, {shown} of it at the face of "
            "the heel)",
            behind=behind,
            shown=shown,
        )
