from longpoint.catalogue.all_trims import trim_tables
from longpoint.catalogue.plan_trims import plan_trims
from longpoint.catalogue.shelves.shelf import TRIM
from longpoint.catalogue.shelves.shelf_keys import SHELF, SHELF_KEYS
from longpoint.shape.fitted import Shapes
from longpoint.survey.house_file import read_house
from tests.house_documents import house


def test_the_examples_together_describe_a_shelf() -> None:
    entry = {key.name: key.example for key in SHELF_KEYS}
    entry |= {"mark": "SH1", "kind": "shelf", "profile": "SB250"}
    entry["shelves"] = [SHELF.example()]
    profiles = {**house()["profiles"], "SB250": {"face": 250, "thickness": 22}}
    survey = read_house(house(profiles=profiles, trims=[entry]), trim_tables((TRIM,)))
    assert survey.house.held == (), [str(finding) for finding in survey.findings]
    result = plan_trims(survey.house, Shapes(), kinds=(TRIM,))
    assert len(result.trims) == 1, [str(finding) for finding in result.findings]
    (shelf,) = result.trims[0].plan.pieces
    assert shelf.left.mitre_deg < 0
    assert shelf.right.mitre_deg < 0
