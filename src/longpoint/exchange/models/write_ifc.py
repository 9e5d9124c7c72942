"""Write the trim of a plan as coverings of an IFC4 model, with their quantities."""

import uuid
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any, Final

import longpoint
from longpoint.errors import ExchangeError
from longpoint.exchange.limited_work import missing_library
from longpoint.house_plan import HousePlan
from longpoint.pieces.piece import Piece, Role
from longpoint.speech.said import say

SPACE_NAME: Final = "longpoint-house"
_OURS: Final = uuid.uuid5(uuid.NAMESPACE_URL, SPACE_NAME)
DESCRIBED: Final = say("Trim of a house as coverings with quantities, without shape")
NO_ROOM: Final = say("no room")
OWN_SET: Final = "longpoint_Piece"
BASE_SET: Final = "Qto_CoveringBaseQuantities"
NOT_COVERING: Final = frozenset({Role.BOARD, Role.LINING, Role.SHELF, Role.HANDRAIL, Role.WEDGE})
"""Roles that are furniture, frame or railing rather than a moulding."""
_SKIRTING: Final = frozenset({Role.RUN, Role.RETURN})


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenModel:
    """A model as the text of an IFC file, and the marks of pieces that aren't in it."""

    text: str
    left_out: tuple[str, ...]


def house_ifc(plan: HousePlan, on: date) -> GivenModel:
    """Return a plan's trim as an IFC4 model: a covering for each piece, in the space of its room.

    Skirting is SKIRTINGBOARD, all other trim MOLDING with what it is as object type, such as
    ARCHITRAVE. Pieces have quantities and no shape: where they stand in the house isn't known.

    Args:
        plan: The planned house.
        on: Day written in the file's head.

    Raises:
        ExchangeError: The library isn't installed, or no piece is a covering.

    References:
        ISO 16739-1 (IFC4): IfcCovering, IfcCoveringTypeEnum, IfcRelCoversSpaces.
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
    writer = _Writer(ifcopenshell, plan.house.name)
    writer.house(plan, pieces)
    head = writer.model.header
    head.file_name.name = f"{plan.readings_code}.ifc"
    head.file_name.time_stamp = f"{on.isoformat()}T00:00:00"
    head.file_name.originating_system = say(
        "longpoint {version}",
        version=longpoint.__version__,
    )
    head.file_description.description = (
        say("Trim of a house as coverings with quantities, without shape"),
    )
    in_it = {piece.mark for piece in pieces}
    return GivenModel(
        text=writer.model.to_string(),
        left_out=tuple(piece.mark for piece in plan.pieces if piece.mark not in in_it),
    )


class _Writer:
    """One model, its identities made from the house's name so that the same house repeats."""

    def __init__(self, library: Any, house: str) -> None:  # noqa: ANN401
        self.model: Any = library.file(schema="IFC4")
        self.compress = library.guid.compress
        self.house_name = house

    def new(self, ifc_class: str, *path: str, **attributes: Any) -> Any:  # noqa: ANN401
        """Make an entity with an identity of its own."""
        name = "/".join((self.house_name, ifc_class, *path))
        guid = self.compress(uuid.uuid5(_OURS, name).hex)
        return self.model.create_entity(ifc_class, GlobalId=guid, **attributes)

    def part(self, ifc_class: str, **attributes: Any) -> Any:  # noqa: ANN401
        """Make an entity that has no identity."""
        return self.model.create_entity(ifc_class, **attributes)

    def house(self, plan: HousePlan, pieces: Sequence[Piece]) -> None:
        units = [
            self.part("IfcSIUnit", UnitType="LENGTHUNIT", Prefix="MILLI", Name="METRE"),
            self.part("IfcSIUnit", UnitType="AREAUNIT", Name="SQUARE_METRE"),
            self.part("IfcSIUnit", UnitType="PLANEANGLEUNIT", Name="RADIAN"),
        ]
        project = self.new(
            "IfcProject",
            Name=plan.house.name,
            UnitsInContext=self.part("IfcUnitAssignment", Units=units),
        )
        site = self.new("IfcSite", Name="Site")
        building = self.new("IfcBuilding", Name=plan.house.name)
        storey = self.new("IfcBuildingStorey", Name="House")
        rooms = list(dict.fromkeys(piece.room or NO_ROOM for piece in pieces))
        spaces = {room: self.new("IfcSpace", room, Name=room) for room in rooms}
        inside = ((project, [site]), (site, [building]), (building, [storey]))
        for outer, inner in (*inside, (storey, list(spaces.values()))):
            self.new("IfcRelAggregates", outer.is_a(), RelatingObject=outer, RelatedObjects=inner)
        coverings = {piece.mark: self.covering(piece) for piece in pieces}
        self.new(
            "IfcRelContainedInSpatialStructure",
            RelatedElements=list(coverings.values()),
            RelatingStructure=storey,
        )
        for room, space in spaces.items():
            own = [coverings[piece.mark] for piece in pieces if (piece.room or NO_ROOM) == room]
            self.new("IfcRelCoversSpaces", room, RelatingSpace=space, RelatedCoverings=own)
        self.materials(plan, pieces, coverings)

    def covering(self, piece: Piece) -> Any:  # noqa: ANN401
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
        for name, quantities in ((BASE_SET, base), (OWN_SET, own)):
            made = [self.part(kind, **values) for kind, values in quantities]
            quantity_set = self.new(
                "IfcElementQuantity", piece.mark, name, Name=name, Quantities=made
            )
            self.new(
                "IfcRelDefinesByProperties",
                piece.mark,
                name,
                RelatedObjects=[covering],
                RelatingPropertyDefinition=quantity_set,
            )
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

Quantity = tuple[str, dict[str, Any]]


def _length(name: str, length_mm: float, said: str) -> Quantity:
    value = round(length_mm, 4)
    return "IfcQuantityLength", {"Name": name, "Description": said, "LengthValue": value}


def _area(name: str, area_m2: float, said: str) -> Quantity:
    value = round(area_m2, 8)
    return "IfcQuantityArea", {"Name": name, "Description": said, "AreaValue": value}
