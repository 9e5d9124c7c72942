"""Write the trim of a plan as coverings of an IFC4 model: quantities, places and bodies."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

import longpoint
from longpoint.errors import ExchangeError
from longpoint.exchange.limited_work import missing_library
from longpoint.exchange.models.ifc_parts import IfcParts, Quantity
from longpoint.exchange.models.ifc_shapes import IfcShapes
from longpoint.house_plan import HousePlan
from longpoint.pieces.cut_solid import Section
from longpoint.pieces.lying import FLAT
from longpoint.pieces.piece import Piece, Role
from longpoint.sheets.laid_house import LaidGroup, LaidHouse, LaidPiece, laid_house
from longpoint.speech.said import say

DESCRIBED: Final = say("Trim of a house as coverings with quantities, each with its body")
NO_ROOM: Final = say("no room")
OWN_SET: Final = "longpoint_Piece"
PLACE_SET: Final = "longpoint_Place"
SET_TYPE: Final = "TRIM"
ROOMS_IN_A_ROW: Final = say(
    "Rooms stand side by side, then what no room holds: places in the building are not known."
)
BASE_SET: Final = "Qto_CoveringBaseQuantities"
NOT_COVERING: Final = frozenset({Role.BOARD, Role.LINING, Role.SHELF, Role.HANDRAIL, Role.WEDGE})
"""Roles that are furniture, frame or railing rather than a moulding."""
_SKIRTING: Final = frozenset({Role.RUN, Role.RETURN})


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenModel:
    """A model as the text of an IFC file, and what is to be said of it.

    Attributes:
        text: The file.
        left_out: Marks of pieces that aren't in it.
        in_a_row: Marks of openings, runs and other trim whose place in the building isn't known.
        without_body: Marks of pieces in it that have quantities and no body.
    """

    text: str
    left_out: tuple[str, ...]
    in_a_row: tuple[str, ...] = ()
    without_body: tuple[str, ...] = ()


def house_ifc(plan: HousePlan, on: date) -> GivenModel:
    """Return a plan's trim as an IFC4 model: a covering for each piece, in the space of its room.

    Skirting is SKIRTINGBOARD, all other trim MOLDING with what it is as object type, such as
    ARCHITRAVE. Each has its body, and its place in its opening or along its wall; those stand in
    their room where the house file tells where, else in a row, and the model says which.

    Args:
        plan: The planned house.
        on: Day written in the file's head.

    Raises:
        ExchangeError: The library isn't installed, or no piece is a covering.

    References:
        ISO 16739-1 (IFC4): IfcCovering, IfcCoveringTypeEnum, IfcRelCoversSpaces,
        IfcElementAssembly, IfcLocalPlacement, IfcFacetedBrep, IfcExtrudedAreaSolid.
    """
    read = say("The trim was to be written as a building model.")
    try:
        import ifcopenshell
        import ifcopenshell.guid
    except ImportError:
        raise missing_library(read, "ifc") from None
    pieces = [piece for piece in plan.pieces if piece.role not in NOT_COVERING]
    if not pieces:
        raise ExchangeError(
            read,
            say("The plan has no piece of architrave, skirting or other moulding."),
            say("Read the openings that are held again, or add the trim to the house file."),
        )
    writer = _HouseWriter(ifcopenshell, plan.house.name)
    laid = laid_house(plan, pieces)
    writer.house(plan, pieces, laid)
    head = writer.model.header
    head.file_name.name = f"{plan.readings_code}.ifc"
    head.file_name.time_stamp = f"{on.isoformat()}T00:00:00"
    head.file_name.originating_system = say(
        "longpoint {version}",
        version=longpoint.__version__,
    )
    head.file_description.description = (DESCRIBED,)
    in_it = {piece.mark for piece in pieces}
    return GivenModel(
        text=writer.model.to_string(),
        left_out=tuple(piece.mark for piece in plan.pieces if piece.mark not in in_it),
        in_a_row=tuple(dict.fromkeys(group.mark for group in laid.groups if not group.room)),
        without_body=tuple(
            each.piece.mark for group in laid.groups for each in group.pieces if each.solid is None
        ),
    )


class _HouseWriter(IfcParts):
    """The model of one house while it is written."""

    def __init__(self, library: Any, house: str) -> None:  # noqa: ANN401
        super().__init__(library, house)
        self.shapes = IfcShapes(self)

    def house(self, plan: HousePlan, pieces: Sequence[Piece], laid: LaidHouse) -> None:
        units = [
            self.part("IfcSIUnit", UnitType="LENGTHUNIT", Prefix="MILLI", Name="METRE"),
            self.part("IfcSIUnit", UnitType="AREAUNIT", Name="SQUARE_METRE"),
            self.part("IfcSIUnit", UnitType="PLANEANGLEUNIT", Name="RADIAN"),
        ]
        project = self.new(
            "IfcProject",
            Name=plan.house.name,
            UnitsInContext=self.part("IfcUnitAssignment", Units=units),
            RepresentationContexts=[self.shapes.context],
        )
        site_at = self.shapes.place(FLAT)
        building_at = self.shapes.place(FLAT, site_at)
        storey_at = self.shapes.place(FLAT, building_at)
        site = self.new("IfcSite", Name="Site", ObjectPlacement=site_at)
        building = self.new("IfcBuilding", Name=plan.house.name, ObjectPlacement=building_at)
        storey = self.new(
            "IfcBuildingStorey",
            Name="House",
            Description=ROOMS_IN_A_ROW,
            ObjectPlacement=storey_at,
        )
        spaces = self.spaces(plan, pieces, laid, storey_at)
        inside = ((project, [site]), (site, [building]), (building, [storey]))
        for outer, inner in (*inside, (storey, list(spaces.values()))):
            self.new("IfcRelAggregates", outer.is_a(), RelatingObject=outer, RelatedObjects=inner)
        sections = {each.name: each.section for each in plan.house.profiles}
        coverings: dict[str, Any] = {}
        assemblies = []
        for index, group in enumerate(laid.groups):
            around = spaces[group.room].ObjectPlacement if group.room else storey_at
            place = self.shapes.place(group.lies, around)
            own = {
                each.piece.mark: self.covering(each, sections.get(each.piece.profile, ()), place)
                for each in group.pieces
            }
            assemblies.append(self.assembly(group, index, place, list(own.values())))
            coverings |= own
        self.new(
            "IfcRelContainedInSpatialStructure",
            RelatedElements=assemblies,
            RelatingStructure=storey,
        )
        for room, space in spaces.items():
            own_marks = [piece.mark for piece in pieces if (piece.room or NO_ROOM) == room]
            self.new(
                "IfcRelCoversSpaces",
                room,
                RelatingSpace=space,
                RelatedCoverings=[coverings[mark] for mark in own_marks],
            )
        self.materials(plan, pieces, coverings)

    def spaces(
        self,
        plan: HousePlan,
        pieces: Sequence[Piece],
        laid: LaidHouse,
        storey_at: Any,  # noqa: ANN401
    ) -> dict[str, Any]:
        """Return the space of each room that has a piece, with its walls' line if that is known."""
        closed = {room.name: room.closed for room in plan.house.rooms}
        fitted = {room.name: room for room in laid.rooms}
        rooms = [piece.room or NO_ROOM for piece in pieces]
        spaces = {}
        for room in dict.fromkeys((*rooms, *fitted)):
            attributes: dict[str, Any] = {}
            fit = fitted.get(room)
            if fit is not None:
                corners = [(corner.x_mm, corner.y_mm) for corner in fit.corners]
                walls = self.shapes.foot_print(corners, closed=closed[room])
                attributes["Representation"] = walls
            place = self.shapes.place(fit.lies if fit is not None else FLAT, storey_at)
            spaces[room] = self.new(
                "IfcSpace", room, Name=room, ObjectPlacement=place, **attributes
            )
        return spaces

    def assembly(
        self,
        group: LaidGroup,
        index: int,
        place: Any,  # noqa: ANN401
        coverings: Sequence[Any],
    ) -> Any:  # noqa: ANN401
        """Return what holds the pieces of an opening, a run or other trim together."""
        # What lies beside an opening for want of a place bears its mark too.
        path = (group.mark, str(index))
        made = self.new(
            "IfcElementAssembly",
            *path,
            Name=group.mark,
            Description=group.said,
            ObjectType=SET_TYPE,
            ObjectPlacement=place,
            PredefinedType="USERDEFINED",
        )
        self.new("IfcRelAggregates", *path, RelatingObject=made, RelatedObjects=coverings)
        values = (
            ("IsPlaceKnown", "IfcBoolean", bool(group.room)),
            ("Place", "IfcText", str(group.said)),
        )
        properties = [
            self.part(
                "IfcPropertySingleValue",
                Name=name,
                NominalValue=self.model.create_entity(kind, value),
            )
            for name, kind, value in values
        ]
        known = self.new(
            "IfcPropertySet", *path, PLACE_SET, Name=PLACE_SET, HasProperties=properties
        )
        self.told(made, "/".join(path), PLACE_SET, known)
        return made

    def covering(self, laid: LaidPiece, section: Section, group_at: Any) -> Any:  # noqa: ANN401
        piece = laid.piece
        is_skirting = piece.role in _SKIRTING and piece.run is not None
        covering = self.new(
            "IfcCovering",
            piece.mark,
            Name=piece.mark,
            Description=say(
                "{role} of {place}, {profile}",
                role=piece.role.value,
                place=piece.place,
                profile=piece.profile,
            ),
            ObjectType=_object_type(piece),
            ObjectPlacement=self.shapes.place(laid.lies, group_at),
            Representation=self.shapes.body(laid, section),
            Tag=piece.mark,
            PredefinedType="SKIRTINGBOARD" if is_skirting else "MOLDING",
        )
        gross_m2 = piece.long_mm * piece.width_mm / 1e6
        net_m2 = (piece.inner_mm + piece.outer_mm) / 2.0 * piece.width_mm / 1e6
        base = (
            _length("Width", piece.thickness_mm, say("Off the wall")),
            _area("GrossArea", gross_m2, say("Length over the long points by face width")),
            _area("NetArea", net_m2, say("Of the face, its ends cut")),
        )
        own = (
            _length("Length", piece.long_mm, say("Over the long points")),
            _length("InnerLength", piece.inner_mm, say("Along the inner edge, at the face")),
            _length("OuterLength", piece.outer_mm, say("Along the outer edge, at the face")),
            _length("FaceWidth", piece.width_mm, say("Across the face")),
        )
        self.quantities(covering, piece.mark, BASE_SET, base)
        self.quantities(covering, piece.mark, OWN_SET, own)
        return covering

    def materials(
        self, plan: HousePlan, pieces: Sequence[Piece], coverings: Mapping[str, Any]
    ) -> None:
        for profile in plan.house.profiles:
            own = [coverings[piece.mark] for piece in pieces if piece.profile == profile.name]
            if own and profile.material:
                self.new(
                    "IfcRelAssociatesMaterial",
                    profile.name,
                    RelatedObjects=own,
                    RelatingMaterial=self.part("IfcMaterial", Name=profile.material),
                )


def _object_type(piece: Piece) -> str:
    if piece.opening is not None and piece.role in _ROUND_AN_OPENING:
        return "ARCHITRAVE"
    return piece.role.value.upper().replace("-", "_")


_ROUND_AN_OPENING: Final = frozenset(
    {Role.HEAD, Role.LEFT_LEG, Role.RIGHT_LEG, Role.SILL, Role.SIDE, Role.SEGMENT}
)


def _length(name: str, length_mm: float, said: str) -> Quantity:
    value = round(length_mm, 4)
    return "IfcQuantityLength", {"Name": name, "Description": said, "LengthValue": value}


def _area(name: str, area_m2: float, said: str) -> Quantity:
    value = round(area_m2, 8)
    return "IfcQuantityArea", {"Name": name, "Description": said, "AreaValue": value}
