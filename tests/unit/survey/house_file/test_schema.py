import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from longpoint.catalogue.all_trims import trim_tables
from longpoint.survey.house_file import house_schema, schema_text
from longpoint.survey.house_file.house_table import HOUSE
from tests.house_documents import house, skirting_run, wall, window

REFERENCE = Path(__file__).resolve().parents[4] / "docs" / "reference" / "house.schema.json"
SCHEMA = house_schema()
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)


def test_the_schema_is_one_itself() -> None:
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_the_schema_in_the_reference_is_the_one_made_today() -> None:
    assert REFERENCE.read_text(encoding="utf-8") == schema_text(trim_tables()), (
        "run `longpoint schema`"
    )


def test_the_example_of_every_key_of_every_table_is_valid() -> None:
    assert list(VALIDATOR.iter_errors(HOUSE.example())) == []
    for name, table in SCHEMA["$defs"].items():
        for key, described in table.get("properties", {}).items():
            inner = jsonschema.Draft202012Validator(
                {"$defs": SCHEMA["$defs"], "$ref": f"#/$defs/{name.replace(' ', '%20')}"}
            )
            errors = [e for e in inner.iter_errors({key: described["examples"][0]}) if e.path]
            assert errors == [], f"{name}: {key}"


@pytest.mark.parametrize(
    "changed",
    [
        house(opnings=[]),
        house(openings=[window(risng=1)]),
        house(openings=[window(plane={"top": 1})]),
        house(openings=[window(top=True)]),
        house(openings=[window(top=-1)]),
        house(openings=[window(mark="<b>")]),
        house(openings=[window(faces=3)]),
        house(openings=[window(kind=None)]),
        house(openings=[window(quirk={"haed": 5})]),
        house(rooms=[{"name": "Loft", "walls": [wall(corner=400)]}]),
        house(runs=[skirting_run(left="wall")]),
        house(profiles={"OG57": {"face": 57}}),
        house(saws={"S1": {"kerff": 2}}),
        house(format="longpoint-house/2"),
        house(crew={"refit": "long"}),
        house(crew={"minutes": {"prof": 1}}),
        house(season={"driest": {"temperature": 20}}),
        house(season={"moisture": 60}),
        house(openings=[window(as_built={"gaps": {"bl": [1, 2, 3]}})]),
        house(openings=[window(as_built={"quirks": {"left": [1, 2, 3, 4]}})]),
        house(openings=[window(mitres="square")]),
    ],
)
def test_what_the_reader_would_refuse_by_its_keys_is_invalid(changed: dict[str, Any]) -> None:
    assert not VALIDATOR.is_valid(changed)


def test_what_may_stand_unread_is_valid() -> None:
    as_built = {
        "gaps": {"bl": [0.3, "?"]},
        "quirks": {"left": "?", "head": [5, "5.5"]},
        "steps": {"tl": "?"},
    }

    assert VALIDATOR.is_valid(house(openings=[window(as_built=as_built, b={"as_built": {}})]))


def test_the_schema_is_plain_json_that_ends_with_a_line() -> None:
    assert json.loads(schema_text()) == SCHEMA
    assert schema_text().endswith("}\n")
