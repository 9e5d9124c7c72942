from dataclasses import replace

from longpoint.errors import Finding, Severity, held_places
from longpoint.pieces.boards import Corner, Side, Stop
from longpoint.pieces.piece import CutKind, Piece
from longpoint.pieces.run_leans import leaning_stop, next_wall_lean, room_leans
from longpoint.pieces.runs import plan_runs
from longpoint.shape.fitted import Shapes
from longpoint.survey.house import House
from longpoint.survey.rooms import Room, RunEnd
from tests.room_builder import a_house, a_room, a_run, a_wall


def leaning_room(**leans: float) -> Room:
    walls = [a_wall(mark, length) for mark, length in zip("NESW", (4000, 3000) * 2, strict=True)]
    return a_room(*(replace(wall, lean_deg=leans.get(wall.mark)) for wall in walls))


def runs(house: House) -> tuple[dict[str, Piece], tuple[Finding, ...]]:
    pieces, findings = plan_runs(house, Shapes(), frozenset())
    return {piece.mark: piece for piece in pieces}, findings


def house_with(**leans: float) -> House:
    return a_house(
        rooms=[leaning_room(**leans)],
        runs=[a_run("A", 4000, wall="N"), a_run("B", 3000, wall="E")],
    )


def test_a_run_takes_the_leans_of_its_wall_and_of_the_next() -> None:
    pieces, findings = runs(house_with(N=2.0, E=2.0, S=2.0, W=2.0))
    scribed = pieces["B"]
    assert scribed.left.kind is CutKind.SCRIBE
    assert scribed.left.mitre_deg > 1.9
    # Measured along the floor the back keeps the length that was read; its top is longer.
    assert scribed.back_mm == 3000
    assert scribed.outer_mm > scribed.inner_mm
    assert any("along the bottom edge" in note for note in scribed.notes)
    assert [f.code for f in findings if "lean" in f.code or "step" in f.code] == []


def test_leans_written_at_the_run_go_first() -> None:
    house = house_with(N=2.0, E=2.0)
    own = replace(house.runs[1], lean_deg=0.0, left_lean_deg=0.0, right_lean_deg=0.0)
    pieces, _ = runs(replace(house, runs=(house.runs[0], own)))
    assert pieces["B"].left.mitre_deg == 0.0


def test_a_next_wall_that_was_not_read_is_taken_as_plumb_and_that_is_said() -> None:
    _, findings = runs(house_with(N=2.0))
    (note,) = [f for f in findings if f.code == "lean-assumed" and f.place == "A"]
    assert note.severity is Severity.NOTE
    assert "2.0 away from the room" in note.read
    assert "left and right end" in note.read
    assert note.wrong == "It was taken as plumb."
    assert "Hold a level to it" in note.do
    assert [f for f in findings if f.code == "corner-step" and f.place == "B"]


def test_where_no_lean_was_read_nothing_is_said_of_leans() -> None:
    _, findings = runs(house_with())
    assert [f for f in findings if f.code in ("lean-assumed", "corner-step")] == []


def test_a_corner_of_two_leans_says_by_how_much_its_edges_step() -> None:
    _, findings = runs(house_with(N=0.0, E=3.0, S=3.0, W=0.0))
    (step,) = [f for f in findings if f.code == "corner-step" and f.place == "B"]
    assert (step.severity, held_places(findings)) == (Severity.WARNING, frozenset())
    # 19 thick: 19 sin 3 = 0.99
    assert "the lower edges step 1 mm" in step.wrong


def test_an_external_corner_of_two_leans_is_told_once() -> None:
    house = a_house(
        rooms=[
            replace(
                leaning_room(N=0.0, E=2.0),
                walls=tuple(
                    replace(wall, corner_deg=270.0) if wall.mark == "N" else wall
                    for wall in leaning_room(N=0.0, E=2.0).walls
                ),
                closed=False,
            )
        ],
        runs=[
            a_run("A", 900, "square", "external", wall="N"),
            a_run("B", 700, "external", "square", wall="E"),
        ],
    )
    _, findings = runs(house)
    assert [f.place for f in findings if f.code == "corner-step"] == ["A"]


def test_a_lean_of_a_run_stands_for_its_wall() -> None:
    house = house_with()
    read = replace(house.runs[0], lean_deg=1.0)
    leans = room_leans(replace(house, runs=(read, house.runs[1])))
    assert leans == {("Den", "N"): 1.0}
    corner = Corner("Den", 0)
    assert next_wall_lean(house.rooms, leans, corner, Side.LEFT) == 1.0
    assert next_wall_lean(house.rooms, leans, corner, Side.RIGHT) is None
    assert next_wall_lean(house.rooms, leans, None, Side.LEFT) is None


def test_beyond_the_end_of_a_chain_of_walls_nothing_leans() -> None:
    room = replace(leaning_room(N=1.0, W=2.0), closed=False)
    leans = room_leans(a_house(rooms=[room]))
    assert next_wall_lean([room], leans, Corner("Den", 3), Side.RIGHT) is None


def test_a_lean_is_assumed_only_where_one_was_read() -> None:
    stop = Stop(kind=RunEnd.INTERNAL)
    assert not leaning_stop(stop, None, None).is_lean_assumed
    assert leaning_stop(stop, None, 1.0) == replace(stop, lean_deg=0.0, is_lean_assumed=True)
    assert not leaning_stop(stop, None, 0.0).is_lean_assumed
    assert leaning_stop(stop, 0.5, 1.0) == replace(stop, lean_deg=0.5)
