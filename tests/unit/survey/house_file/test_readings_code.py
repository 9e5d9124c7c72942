from longpoint.survey.house_file import readings_code
from longpoint.survey.house_file.readings_code import CODE_SIGNS
from tests.house_documents import house, the_house, window


def test_the_code_is_six_signs_that_are_not_taken_for_each_other() -> None:
    code = readings_code(the_house())

    assert len(code) == 6
    assert set(code) <= set(CODE_SIGNS)
    assert not set(CODE_SIGNS) & set("01258BILOSUVZ")


def test_the_code_is_the_same_for_the_same_readings_however_they_are_arranged() -> None:
    backwards = dict(reversed(house().items()))

    assert readings_code(the_house(openings=[window()])) == readings_code(
        the_house(**backwards, openings=[dict(reversed(window().items()))])
    )


def test_any_change_changes_the_code() -> None:
    houses = [
        the_house(openings=[window()]),
        the_house(openings=[window(top=1188)]),
        the_house(openings=[window(plane={"tl": 1, "tr": 0, "br": 0, "bl": 0})]),
        the_house(openings=[window(), window(mark="W2")]),
        the_house(openings=[window(), window(mark="W2", top="x")]),
        the_house(openings=[window()], units="in"),
    ]

    assert len({readings_code(home) for home in houses}) == len(houses)
