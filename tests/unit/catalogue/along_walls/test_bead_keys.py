from longpoint.catalogue.along_walls.bead_keys import BEAD_KEYS
from tests.rail_houses import by_mark, the_house, the_plan


def test_the_examples_together_describe_a_bead_on_two_walls_and_two_lengths() -> None:
    keys = {key.name: key.example for key in BEAD_KEYS}
    made = the_plan(the_house({"kind": "cover-bead", "profile": "QD15", **keys}))
    assert set(by_mark(made)) == {"N", "E", "length-1", "length-2"}
