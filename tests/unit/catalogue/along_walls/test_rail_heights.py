from tests.rail_houses import (
    codes,
    the_house,
    the_plan,
    walls,
)

HIGH = {"kind": "picture-rail", "height": 2200}


def test_the_height_is_given_at_every_corner_off_a_level_line() -> None:
    line = [{"wall": "N", "left": 1002, "right": 1011}, {"wall": "S", "left": 1004, "right": 1000}]
    made = the_plan(the_house({**HIGH, "height": 2010, "level_line": line}))
    said = next(line for line in made.lines if "above the floor" in line)
    # The floor is 9 lower in the north-east corner, so the rail stands 9 higher above it.
    for part in (
        "wall N left 2010, right 2019",
        "wall E left 2019, right 2012",
        "wall S left 2012, right 2008",
        "wall W left 2008, right 2010",
    ):
        assert part in said
    assert "level-line-missing" not in codes(made)


def test_floors_read_along_the_walls_tell_the_heights_as_well() -> None:
    plan = walls(N={"floor": [[0, 0], [4206, -9]]}, S={"floor": [[0, -2], [4206, 2]]})
    made = the_plan(the_house({**HIGH, "height": 2010}, plan=plan))
    said = next(line for line in made.lines if "above the floor" in line)
    assert "wall N left 2010, right 2019" in said
    assert "wall S left 2012, right 2008" in said
    assert "level-line-missing" not in codes(made)


def test_without_a_level_line_that_is_said() -> None:
    made = the_plan(the_house(HIGH))
    assert "level-line-missing" in codes(made)
    assert any("wall N left 2200" in line for line in made.lines)


def test_a_corner_read_twice_has_to_agree() -> None:
    line = [{"wall": "N", "left": 1002, "right": 1011}, {"wall": "E", "left": 1017}]
    made = the_plan(the_house({**HIGH, "level_line": line}))
    (finding,) = [each for each in made.findings if each.code == "level-line-disagrees"]
    assert "6 mm" in finding.wrong
    line = [{"wall": "N", "left": 1002, "right": 1011}, {"wall": "E", "left": 1012}]
    assert "level-line-disagrees" not in codes(the_plan(the_house({**HIGH, "level_line": line})))


def test_the_datum_may_be_another_corner() -> None:
    line = [{"wall": "N", "left": 1002, "right": 1011}]
    made = the_plan(the_house({**HIGH, "datum": "E", "level_line": line}))
    assert any("wall N left 2191, right 2200" in line for line in made.lines)
