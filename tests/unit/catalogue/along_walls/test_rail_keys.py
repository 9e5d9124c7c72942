from longpoint.catalogue.along_walls.rail_keys import RAIL_KEYS
from tests.rail_houses import by_mark, the_house, the_plan


def test_the_examples_together_describe_a_rail_on_two_walls() -> None:
    keys = {key.name: key.example for key in RAIL_KEYS}
    made = the_plan(the_house({"kind": "picture-rail", **keys}))
    assert set(by_mark(made)) == {"N", "E"}
    assert any("wall N left 2010, right 2019" in line for line in made.lines)
