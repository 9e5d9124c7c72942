import json

from longpoint.survey.house_file import house_document, read_house
from tests.house_documents import defaults, door, house, skirting_run, the_house, wall, window


def test_settings_are_written_where_they_hold() -> None:
    document = house_document(the_house(openings=[window(room="Kitchen")]))

    (written,) = json.loads(json.dumps(document["openings"]))
    assert written["architrave"] == dict.fromkeys(("head", "left", "right", "sill"), "OG57")
    assert written["quirk"] == {"head": 5, "left": 5, "right": 5, "sill": 5}
    assert (written["top"], written["room"], written["method"]) == (1187, "Kitchen", "batch")
    assert "quirk" not in json.loads(json.dumps(document["defaults"]))


def test_readings_are_written_as_they_were() -> None:
    document = house_document(the_house(openings=[window(top="1187.50", left=[462, "461.0"])]))

    (written,) = json.loads(json.dumps(document["openings"]))
    assert (written["top"], written["left"]) == ("1187.50", [462, "461.0"])


def test_in_a_house_in_inches_a_length_is_written_in_millimetres_with_its_unit() -> None:
    changed = house(units="in", profiles={"A": {"face": "2 1/4", "thickness": "11/16"}})

    document = house_document(read_house(changed).house)

    assert json.loads(json.dumps(document["profiles"])) == {
        "A": {"face": "57.15 mm", "thickness": "17.4625 mm", "reversible": False}
    }


def test_tools_that_were_assumed_are_left_out_so_that_they_are_assumed_again() -> None:
    first = read_house({"format": "longpoint-house/1", "name": "Wren House"})

    document = house_document(first.house)

    assert (document["tapes"], document["saws"]) == ({}, {})
    assert read_house(document).house == first.house


def test_what_a_tape_reads_too_much_is_put_back_before_it_is_taken_off_again() -> None:
    home = the_house(
        tapes={"T1": {"class": "II", "take_off": 1.5}},
        rooms=[{"name": "Loft", "walls": [wall(openings=[{"mark": "D1", "from_left": 0}])]}],
        runs=[skirting_run()],
        openings=[door()],
    )

    document = json.loads(json.dumps(house_document(home)))

    assert document["runs"][0]["length"] == 2284
    assert document["rooms"][0]["walls"][0]["openings"][0]["from_left"] == 0
    assert read_house(document).house == home


def test_entries_that_could_not_be_read_are_not_written() -> None:
    home = the_house(openings=[window(), window(mark="W2", top="x")])

    assert len(home.held) == 1
    assert len(json.loads(json.dumps(house_document(home)["openings"]))) == 1


def test_what_nobody_told_of_the_crew_and_the_seasons_is_left_out() -> None:
    told = house()
    bare = {key: value for key, value in told.items() if key not in ("crew", "season")}

    assert not {"crew", "season"} & house_document(read_house(bare).house).keys()
    assert {"crew", "season"} <= house_document(read_house(told).house).keys()


def test_what_was_not_read_of_a_set_is_written_as_not_read_or_left_out() -> None:
    as_built = {"gaps": {"tl": ["?", 0.2], "tr": ["?", "?"]}, "quirks": {"left": 5}}

    (written,) = json.loads(
        json.dumps(house_document(the_house(openings=[window(as_built=as_built)]))["openings"])
    )

    assert written["as_built"] == {"gaps": {"tl": ["?", 0.2]}, "quirks": {"left": ["?", 5, "?"]}}


def test_a_mirrored_second_face_is_written_with_no_more_than_its_set() -> None:
    b = {"as_built": {"steps": {"tl": 0.5}}}

    home = the_house(openings=[window(faces=2, b=b)])

    (written,) = json.loads(json.dumps(house_document(home)["openings"]))
    assert written["b"] == b
    assert read_house(house_document(home)).house == home


def test_the_tape_at_the_saw_is_written_where_it_is_another() -> None:
    tapes = {"T1": {"class": "II"}, "T2": {"class": "I"}}

    def written(**changes: object) -> dict[str, object]:
        home = the_house(tapes=tapes, defaults=defaults(**changes))
        return dict(json.loads(json.dumps(house_document(home)["defaults"])))

    assert written(saw_tape="T2")["saw_tape"] == "T2"
    assert "saw_tape" not in written(saw_tape="T1")
