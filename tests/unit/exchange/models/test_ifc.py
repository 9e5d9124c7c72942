"""Models given out are valid and read back; models taken in are limited and never readings."""

import subprocess
import sys
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import Any, Literal

import ifcopenshell
import ifcopenshell.guid
import ifcopenshell.util.element
import pytest

from longpoint.errors import ExchangeError
from longpoint.exchange.confirm.found_values import FoundValue
from longpoint.exchange.confirm.house_put import put_in_house_file
from longpoint.exchange.house_files import load_house
from longpoint.exchange.models.read_ifc import model_values
from longpoint.exchange.models.write_ifc import house_ifc
from longpoint.pipeline import plan_house

EXAMPLE = Path(__file__).parents[4] / "examples" / "wren-house.toml"
DAY = date(2026, 3, 1)


@pytest.fixture(scope="module")
def plan() -> Any:  # noqa: ANN401
    return plan_house(load_house(EXAMPLE))


@pytest.fixture(scope="module")
def given(plan: Any) -> Any:  # noqa: ANN401
    return ifcopenshell.file.from_string(house_ifc(plan, DAY).text)


def validated(path: Path) -> subprocess.CompletedProcess[str]:
    """Hold a model to the schema and its rules, by the library's own command."""
    command = [sys.executable, "-m", "ifcopenshell.validate", "--rules", str(path)]
    return subprocess.run(command, check=False, capture_output=True, text=True)


def test_the_model_is_valid_by_schema_and_rules(plan: Any, tmp_path: Path) -> None:  # noqa: ANN401
    path = tmp_path / "house.ifc"
    text = house_ifc(plan, DAY).text
    path.write_text(text, encoding="utf-8")
    assert "FILE_SCHEMA(('IFC4'))" in text
    sound = validated(path)
    assert sound.returncode == 0, sound.stdout + sound.stderr
    path.write_text(text.replace(".MOLDING.", ".ARCHITRAVE."), encoding="utf-8")
    assert validated(path).returncode != 0


def test_each_piece_is_a_covering_with_its_quantities(plan: Any, given: Any) -> None:  # noqa: ANN401
    pieces = {piece.mark: piece for piece in plan.pieces if piece.mark != "W4-board"}
    coverings = {covering.Name: covering for covering in given.by_type("IfcCovering")}
    assert set(coverings) == set(pieces)
    for mark, covering in coverings.items():
        piece = pieces[mark]
        kind = "SKIRTINGBOARD" if piece.run else "MOLDING"
        assert covering.PredefinedType == kind
        sets = ifcopenshell.util.element.get_psets(covering, qtos_only=True)
        assert sets["longpoint_Piece"]["Length"] == pytest.approx(piece.long_mm, abs=1e-3)
        base = sets["Qto_CoveringBaseQuantities"]
        assert base["Width"] == piece.thickness_mm
        # The face of a mitred piece is a trapezium.
        face_m2 = (piece.inner_mm + piece.outer_mm) / 2 * piece.width_mm / 1e6
        assert base["NetArea"] == pytest.approx(face_m2, abs=1e-6)
        assert base["GrossArea"] >= base["NetArea"] - 1e-9
    assert coverings["W1-head"].ObjectType == "ARCHITRAVE"


def test_each_room_is_a_space_that_its_pieces_cover(plan: Any, given: Any) -> None:  # noqa: ANN401
    covered = {
        relation.RelatingSpace.Name: {each.Name for each in relation.RelatedCoverings}
        for relation in given.by_type("IfcRelCoversSpaces")
    }
    kitchen = {p.mark for p in plan.pieces if p.room == "Kitchen" and p.mark != "W4-board"}
    assert covered["Kitchen"] == kitchen
    assert "S4" in "".join(covered["Hall"])


def test_what_is_no_covering_and_what_is_held_is_not_in_it(plan: Any, given: Any) -> None:  # noqa: ANN401
    assert house_ifc(plan, DAY).left_out == ("W4-board",)
    assert not [c for c in given.by_type("IfcCovering") if c.Name.startswith("W3")]


def test_the_same_plan_makes_the_same_model(plan: Any) -> None:  # noqa: ANN401
    assert house_ifc(plan, DAY).text == house_ifc(plan, DAY).text


def model(
    folder: Path, schema: Literal["IFC4", "IFC2X3"] = "IFC4", prefix: str | None = "MILLI"
) -> Path:
    """Write a model of one storey by hand: two windows, a door, and two holes, one of them bare."""
    made = ifcopenshell.file(schema=schema)

    def new(ifc_class: str, **attributes: Any) -> Any:  # noqa: ANN401
        if schema == "IFC2X3":
            attributes.setdefault("OwnerHistory", history)
        return made.create_entity(ifc_class, GlobalId=ifcopenshell.guid.new(), **attributes)

    person = made.create_entity("IfcPerson", FamilyName="Nobody")
    crew = made.create_entity("IfcOrganization", Name="Nobody")
    both = made.create_entity("IfcPersonAndOrganization", ThePerson=person, TheOrganization=crew)
    program = made.create_entity("IfcApplication", crew, "1", "Test", "test")
    history = made.create_entity(
        "IfcOwnerHistory", both, program, ChangeAction="ADDED", CreationDate=0
    )
    metre = made.create_entity("IfcSIUnit", UnitType="LENGTHUNIT", Prefix=prefix, Name="METRE")
    units = made.create_entity("IfcUnitAssignment", Units=[metre])
    new("IfcProject", Name="House", UnitsInContext=units)
    storey = new("IfcBuildingStorey", Name="Ground floor", CompositionType="ELEMENT")
    step = 1.0 if prefix else 0.001
    size = {"OverallWidth": 1194.0 * step, "OverallHeight": 894.0 * step}
    window = new("IfcWindow", Name="Window:1194:271828", Tag="271828", **size)
    other = new("IfcWindow", Name="W7", **size)
    door = new("IfcDoor", Name="D1", OverallWidth=838.0 * step)
    wall = new("IfcWall", Name="Wall")
    filled, bare = new("IfcOpeningElement", Name="Hole"), new("IfcOpeningElement", Name="Arch 1")
    for hole in (filled, bare):
        new("IfcRelVoidsElement", RelatingBuildingElement=wall, RelatedOpeningElement=hole)
    new("IfcRelFillsElement", RelatingOpeningElement=filled, RelatedBuildingElement=window)
    new(
        "IfcRelContainedInSpatialStructure",
        RelatedElements=[window, other, door, wall],
        RelatingStructure=storey,
    )
    wide = made.create_entity("IfcQuantityLength", Name="Width", LengthValue=900.0 * step)
    sizes = new("IfcElementQuantity", Name="Qto_OpeningElementBaseQuantities", Quantities=[wide])
    new("IfcRelDefinesByProperties", RelatedObjects=[bare], RelatingPropertyDefinition=sizes)
    path = folder / "a.ifc"
    made.write(str(path))
    return path


def values(path: Path) -> dict[tuple[str, str], FoundValue]:
    return {(value.mark, value.path): value for value in model_values(path)}


@pytest.mark.parametrize(("schema", "prefix"), [("IFC4", "MILLI"), ("IFC4", None),
                                                ("IFC2X3", "MILLI")])  # fmt: skip
def test_openings_come_as_nominal_sizes_and_never_as_readings(
    tmp_path: Path, schema: Literal["IFC4", "IFC2X3"], prefix: str | None
) -> None:
    found = values(model(tmp_path, schema, prefix))
    assert {mark for mark, _ in found} == {"D1", "W1", "W7", "Arch 1"}
    assert {path for _, path in found} == {"room", "kind", "nominal.width", "nominal.height"}
    assert found["W7", "nominal.width"].value == "1194"
    assert found["W7", "room"].value == "Ground floor"
    assert found["Arch 1", "kind"].value == "cased"
    assert found["Arch 1", "nominal.width"].value == "900"
    assert found["Arch 1", "room"].value == "Ground floor"
    assert "doesn't say" in found["D1", "nominal.height"].trouble
    assert "IfcWindow Window:1194:271828" in found["W1", "kind"].written


@pytest.mark.parametrize(
    "data",
    [
        b"", b"hello", b"PK\x03\x04",
        b"ISO-10303-21;\nHEADER;\n", b"ISO-10303-21;" + b"(" * 200_000,
        b"ISO-10303-21;\nHEADER;FILE_SCHEMA(('IFC99'));ENDSEC;DATA;ENDSEC;END-ISO-10303-21;",
    ],
    ids=["empty", "text", "zip", "cut short", "nested", "schema"],
)  # fmt: skip
def test_a_hostile_model_is_refused_in_three_sentences(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "a.ifc"
    path.write_bytes(data)
    with pytest.raises(ExchangeError) as caught:
        model_values(path)
    assert caught.value.read.endswith(".")
    assert caught.value.do.endswith(".")


ITSELF = (
    b"ISO-10303-21;\nHEADER;FILE_DESCRIPTION((''),'2;1');FILE_NAME('','',(''),(''),'','','');"
    b"FILE_SCHEMA(('IFC4'));ENDSEC;DATA;#1=IFCDOOR(#1,#1,#1);ENDSEC;END-ISO-10303-21;"
)


def test_a_door_that_names_itself_and_has_no_size_is_a_trouble(tmp_path: Path) -> None:
    path = tmp_path / "a.ifc"
    path.write_bytes(ITSELF)
    found = values(path)
    assert {line.trouble != "" for line in found.values() if "nominal" in line.path} == {True}


def test_without_its_library_a_model_says_how_to_get_it(
    plan: Any,  # noqa: ANN401
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setitem(sys.modules, "ifcopenshell", None)
    with pytest.raises(ExchangeError, match=r"pip install 'longpoint\[ifc\]'"):
        house_ifc(plan, DAY)


def test_an_opening_known_only_from_the_drawing_is_held(tmp_path: Path) -> None:
    house = tmp_path / "house.json"
    house.write_text(
        '{"format": "longpoint-house/1", "name": "H", "defaults": {"architrave": "A"},'
        ' "profiles": {"A": {"face": 57, "thickness": 18}}}',
        encoding="utf-8",
    )
    confirmed = [
        replace(value, confirmed="no" if value.trouble else "yes")
        for value in model_values(model(tmp_path))
    ]
    put_in_house_file(house, tuple(confirmed))
    planned = plan_house(load_house(house))
    assert planned.held == {"D1", "W1", "W7", "Arch 1"}
    assert planned.pieces == ()
