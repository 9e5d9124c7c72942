"""Places and bodies of a building model: what stands where, and the timber of each piece."""

from collections.abc import Sequence
from typing import Any, Final

from longpoint.exchange.models.ifc_parts import IfcParts
from longpoint.pieces.cut_solid import CutSolid, Section, section_of
from longpoint.pieces.lying import FLAT, Lying
from longpoint.pieces.piece import SQUARE_CUT, Piece
from longpoint.sheets.laid_house import LaidPiece
from longpoint.trims.joint_plane import Vector

PRECISION_MM: Final = 1e-4
"""Points nearer than this are one point to whoever reads the model."""
_DIGITS: Final = 6


class IfcShapes:
    """Makes places and bodies in one model, and the contexts that they are drawn in."""

    def __init__(self, parts: IfcParts) -> None:
        self.part = parts.part
        self.context = self.part(
            "IfcGeometricRepresentationContext",
            ContextIdentifier="Model",
            ContextType="Model",
            CoordinateSpaceDimension=3,
            Precision=PRECISION_MM,
            WorldCoordinateSystem=self._axes(FLAT),
        )
        self.body_context = self._inner("Body", "MODEL_VIEW")
        self.plan_context = self._inner("FootPrint", "PLAN_VIEW")

    def place(self, lies: Lying, relative_to: Any = None) -> Any:  # noqa: ANN401
        """Return a place, relative to another one where that is given."""
        return self.part(
            "IfcLocalPlacement", PlacementRelTo=relative_to, RelativePlacement=self._axes(lies)
        )

    def foot_print(self, corners: Sequence[tuple[float, float]], *, closed: bool) -> Any:  # noqa: ANN401
        """Return a room's walls as a line on its floor."""
        ring = [*corners, corners[0]] if closed else corners
        line = self.part("IfcPolyline", Points=[self._point(corner) for corner in ring])
        return self._shape(self.plan_context, "FootPrint", "Curve2D", line)

    def body(self, laid: LaidPiece, section: Section) -> Any:  # noqa: ANN401
        """Return a piece's timber, in its own frame; None where its two cuts cross.

        A piece cut square is its section carried along it. Any other is its flat faces: every
        program shows those, and none has to cut a solid to get them.
        """
        if laid.solid is None:
            return None
        if laid.piece.left == laid.piece.right == SQUARE_CUT:
            solid = self._carried(laid.piece, section)
            return self._shape(self.body_context, "Body", "SweptSolid", solid)
        return self._shape(self.body_context, "Body", "Brep", self._faceted(laid.solid))

    def _carried(self, piece: Piece, section: Section) -> Any:  # noqa: ANN401
        if section:
            ring = section_of(piece, section)
            points = [self._point(corner) for corner in (*ring, ring[0])]
            profile = self.part(
                "IfcArbitraryClosedProfileDef",
                ProfileType="AREA",
                ProfileName=piece.profile,
                OuterCurve=self.part("IfcPolyline", Points=points),
            )
        else:
            middle = self._point((piece.width_mm / 2.0, piece.thickness_mm / 2.0))
            profile = self.part(
                "IfcRectangleProfileDef",
                ProfileType="AREA",
                ProfileName=piece.profile,
                Position=self.part("IfcAxis2Placement2D", Location=middle),
                XDim=piece.width_mm,
                YDim=piece.thickness_mm,
            )
        across_and_up = Lying(origin=(0.0, 0.0, 0.0), along=(0.0, 1.0, 0.0), across=(0.0, 0.0, 1.0))
        return self.part(
            "IfcExtrudedAreaSolid",
            SweptArea=profile,
            Position=self._axes(across_and_up),
            ExtrudedDirection=self._direction((0.0, 0.0, 1.0)),
            Depth=_rounded(piece.inner_mm),
        )

    def _faceted(self, solid: CutSolid) -> Any:  # noqa: ANN401
        points = [self._point(point) for point in solid.points]
        faces = []
        for face in solid.faces:
            loop = self.part("IfcPolyLoop", Polygon=[points[number] for number in face])
            bound = self.part("IfcFaceOuterBound", Bound=loop, Orientation=True)
            faces.append(self.part("IfcFace", Bounds=[bound]))
        return self.part("IfcFacetedBrep", Outer=self.part("IfcClosedShell", CfsFaces=faces))

    def _shape(self, context: Any, name: str, kind: str, item: Any) -> Any:  # noqa: ANN401
        drawn = self.part(
            "IfcShapeRepresentation",
            ContextOfItems=context,
            RepresentationIdentifier=name,
            RepresentationType=kind,
            Items=[item],
        )
        return self.part("IfcProductDefinitionShape", Representations=[drawn])

    def _inner(self, name: str, view: str) -> Any:  # noqa: ANN401
        return self.part(
            "IfcGeometricRepresentationSubContext",
            ContextIdentifier=name,
            ContextType="Model",
            ParentContext=self.context,
            TargetView=view,
        )

    def _axes(self, lies: Lying) -> Any:  # noqa: ANN401
        return self.part(
            "IfcAxis2Placement3D",
            Location=self._point(lies.origin),
            Axis=self._direction(lies.out),
            RefDirection=self._direction(lies.along),
        )

    def _point(self, at: Sequence[float]) -> Any:  # noqa: ANN401
        return self.part("IfcCartesianPoint", Coordinates=[_rounded(value) for value in at])

    def _direction(self, way: Vector) -> Any:  # noqa: ANN401
        # No rounding: a direction is kept to the last bit, or a long piece's far end would move.
        return self.part("IfcDirection", DirectionRatios=[value + 0.0 for value in way])


def _rounded(value_mm: float) -> float:
    return round(value_mm, _DIGITS) + 0.0
