"""Read the doors, windows and bare openings of a model; run in a process of its own."""

from collections.abc import Callable
from typing import Any, Final

MOST_OPENINGS: Final = 2_000
KINDS: Final = {"IfcDoor": "door", "IfcWindow": "window", "IfcOpeningElement": "cased"}
LONGEST_NAME: Final = 100


def load() -> Callable[[str], list[dict[str, Any]]]:
    """Return the work, once its library is there.

    Raises:
        ImportError: The library isn't installed.
    """
    import ifcopenshell
    import ifcopenshell.util.element
    import ifcopenshell.util.unit

    def openings_of(name: str) -> list[dict[str, Any]]:
        model = ifcopenshell.open(name)
        to_mm = 1000.0 * ifcopenshell.util.unit.calculate_unit_scale(model)
        found = []
        for ifc_class, kind in KINDS.items():
            for element in model.by_type(ifc_class):
                if ifc_class == "IfcOpeningElement" and element.HasFillings:
                    continue
                found.append(_opening(element, ifc_class, kind, to_mm))
                if len(found) > MOST_OPENINGS:
                    raise MemoryError
        return found

    def _opening(element: Any, ifc_class: str, kind: str, to_mm: float) -> dict[str, Any]:  # noqa: ANN401
        storey = ifcopenshell.util.element.get_container(element, ifc_class="IfcBuildingStorey")
        if storey is None and ifc_class == "IfcOpeningElement":
            hosts = [relation.RelatingBuildingElement for relation in element.VoidsElements or ()]
            storey = next(map(ifcopenshell.util.element.get_container, hosts), None)
        width, height = _size(element)
        return {
            "class": ifc_class,
            "kind": kind,
            "id": element.id(),
            "name": str(element.Name or "")[:LONGEST_NAME],
            "tag": str(getattr(element, "Tag", None) or "")[:LONGEST_NAME],
            "storey": str((storey.Name if storey is not None else "") or "")[:LONGEST_NAME],
            "width_mm": None if width is None else float(width) * to_mm,
            "height_mm": None if height is None else float(height) * to_mm,
        }

    def _size(element: Any) -> tuple[float | None, float | None]:  # noqa: ANN401
        if hasattr(element, "OverallWidth"):
            return element.OverallWidth, element.OverallHeight
        sets = ifcopenshell.util.element.get_psets(element, qtos_only=True).values()
        sizes = {key: value for each in sets for key, value in each.items()}
        return sizes.get("Width"), sizes.get("Height")

    return openings_of
