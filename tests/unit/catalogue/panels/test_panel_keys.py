from longpoint.catalogue.panels.panel_keys import PANELLING_KEYS
from longpoint.pieces.piece import Role
from tests.panel_walls import the_plan


def test_the_examples_together_describe_a_stair_that_can_be_panelled() -> None:
    made = the_plan(**{key.name: key.example for key in PANELLING_KEYS})
    assert sum(piece.role is Role.STILE for piece in made.pieces) == 10
