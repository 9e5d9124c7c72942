from longpoint.survey.house_file import readings_code
from longpoint.survey.house_file.readings_code import CODE_SIGNS
from tests.house_documents import defaults, house, the_house, window


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


def test_what_changes_no_piece_leaves_the_code_alone() -> None:
    plain = readings_code(the_house(openings=[window(faces=2)]))
    gaps = {"gaps": {"bl": [0.35, 0]}}
    saw = {**house()["saws"]["S1"], "blade": "B2", "setting": "new", "dialled": {"left": 0.1}}
    section = [[0, 0], [57, 0], [57, 18], [0, 9]]
    drawn = {name: {**profile, "section": section} for name, profile in house()["profiles"].items()}
    two_tapes = {**house()["tapes"], "T2": {"class": "I"}}

    for changes in (
        {"openings": [window(faces=2, as_built=gaps)]},
        {"openings": [window(faces=2, b={"as_built": gaps})]},
        {"openings": [window(faces=2, tap_room=1)]},
        {"crew": {"refit": 20}},
        {"season": {"moisture": 11}},
        {"saws": {"S1": saw}},
        {"profiles": drawn},
    ):
        assert readings_code(the_house(**{"openings": [window(faces=2)], **changes})) == plain
    assert readings_code(
        the_house(openings=[window()], tapes=two_tapes, defaults=defaults(saw_tape="T2"))
    ) == readings_code(the_house(openings=[window()], tapes=two_tapes))


def test_what_is_set_as_read_says_no_more_than_a_file_that_leaves_it_out() -> None:
    said = the_house(openings=[window(mitres="as-read")])

    assert readings_code(said) == readings_code(the_house(openings=[window()]))


def test_any_change_changes_the_code() -> None:
    houses = [
        the_house(openings=[window()]),
        the_house(openings=[window(top=1188)]),
        the_house(openings=[window(plane={"tl": 1, "tr": 0, "br": 0, "bl": 0})]),
        the_house(openings=[window(), window(mark="W2")]),
        the_house(openings=[window(), window(mark="W2", top="x")]),
        the_house(openings=[window()], units="in"),
        the_house(openings=[window(mitres="at-stop")]),
    ]

    assert len({readings_code(home) for home in houses}) == len(houses)
