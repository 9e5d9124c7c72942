"""The parts that a building model is written of, their identities made from the house's name."""

import uuid
from typing import Any, Final

SPACE_NAME: Final = "longpoint-house"
_OURS: Final = uuid.uuid5(uuid.NAMESPACE_URL, SPACE_NAME)

Quantity = tuple[str, dict[str, Any]]


class IfcParts:
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

    def told(self, of: Any, mark: str, name: str, definition: Any) -> None:  # noqa: ANN401
        """Tie a set of properties or quantities to what it tells of."""
        self.new(
            "IfcRelDefinesByProperties",
            mark,
            name,
            RelatedObjects=[of],
            RelatingPropertyDefinition=definition,
        )

    def quantities(self, of: Any, mark: str, name: str, quantities: tuple[Quantity, ...]) -> None:  # noqa: ANN401
        """Write a set of quantities of an element."""
        made = [self.part(kind, **values) for kind, values in quantities]
        self.told(
            of,
            mark,
            name,
            self.new("IfcElementQuantity", mark, name, Name=name, Quantities=made),
        )
