"""A room, a run or other trim by itself: its drawing, its pieces, what is to be said of it."""

from collections.abc import Iterable, Sequence

from longpoint.catalogue.sketch import Sketch
from longpoint.house_plan import HousePlan
from longpoint.phone.laying import require_place
from longpoint.phone.looked import piece_rows
from longpoint.phone.messages import Document, Face, Look, Said
from longpoint.phone.planned import Ports, planned, said_of
from longpoint.phone.ways import form_name
from longpoint.pieces.piece import Piece
from longpoint.sheets.hold_picture import hold_picture
from longpoint.sheets.room_sketch import room_question, room_sketch, run_sketch
from longpoint.sheets.sketch_drawing import sketch_drawing
from longpoint.sheets.svg import drawing_svg


def looked_at_place(document: Document, way: Sequence[str], held: tuple[Said, ...]) -> Look:
    """Return how a room, a run or other trim looks by itself, or the whole that a part is of.

    Args:
        document: The house.
        way: The way to the place.
        held: What is held before anything is reckoned.

    Raises:
        SurveyError: There is no such place, or the house can't be used as a whole.
    """
    require_place(document, way)
    root = (way[0], way[1])
    plan = planned(_around(document, root), held, "", Ports(), forecast=False).plan
    pieces = _pieces(plan, root)
    places = {root[1], *(f"{root[1]} {wall}" for wall in _walls(plan, root)), *_runs(pieces)}
    is_held = bool(plan.held & {root[1]})
    return Look(
        mark=root[1],
        is_held=is_held,
        faces=tuple(_faces(plan, root, pieces, form_name(document, root), is_held=is_held)),
        pieces=piece_rows(plan, pieces),
        findings=tuple(said for said in said_of(plan.findings) if said.place in places),
        lines=tuple(
            line
            for trim in plan.trims
            if root[0] == "trims" and trim.entry.mark == root[1]
            for line in trim.plan.lines
        ),
    )


def _around(document: Document, root: tuple[str, str]) -> Document:
    """Return the house with no more than what the place needs to be seen by."""
    name, label = root
    less = {key: value for key, value in document.items() if key not in ("runs", "trims")}
    if name == "rooms":
        runs = [run for run in document.get("runs", ()) if run.get("room") == label]
        rooms = [room for room in document.get("rooms", ()) if room.get("name") == label]
        return less | {"rooms": rooms, "runs": runs}
    rows = [row for row in document.get(name, ()) if row.get("mark") == label]
    return less | {name: rows}


def _pieces(plan: HousePlan, root: tuple[str, str]) -> tuple[Piece, ...]:
    match root[0]:
        case "rooms":
            found = [p for p in plan.pieces if p.run is not None and p.room == root[1]]
        case "runs":
            found = [p for p in plan.pieces if p.run == root[1]]
        case _:
            found = [p for p in plan.pieces if p.trim == root[1]]
    return tuple(found)


def _walls(plan: HousePlan, root: tuple[str, str]) -> Iterable[str]:
    rooms = plan.house.rooms if root[0] == "rooms" else ()
    return (wall.mark for room in rooms if room.name == root[1] for wall in room.walls)


def _runs(pieces: Iterable[Piece]) -> Iterable[str]:
    return (piece.run for piece in pieces if piece.run)


def _faces(
    plan: HousePlan,
    root: tuple[str, str],
    pieces: tuple[Piece, ...],
    form: str,
    *,
    is_held: bool,
) -> Iterable[Face]:
    name, label = root
    if is_held:
        kind = form.removeprefix("trims:").removesuffix("s").replace("-", " ")
        yield Face(svg=drawing_svg(hold_picture(label, kind)), question="")
    elif name == "rooms":
        shapes = {shape.name: shape for shape in plan.shapes.rooms}
        for room in plan.house.rooms:
            if room.name == label and label in shapes:
                fitted = shapes[label]
                yield _face(
                    room_sketch(room, fitted, plan.house.units), room_question(room, fitted)
                )
    elif name == "runs":
        for run in plan.house.runs:
            if run.mark == label:
                profile = plan.house.profile(run.profile)
                yield _face(run_sketch(run, pieces, profile, plan.house.units), "")
    else:
        for trim in plan.trims:
            if trim.entry.mark == label:
                for sketch in trim.plan.sketches:
                    yield _face(sketch, sketch.caption)


def _face(sketch: Sketch, question: str) -> Face:
    return Face(svg=drawing_svg(sketch_drawing(sketch, width_mm=PHONE_MM)), question=question)


PHONE_MM = 106.0
"""As wide as an opening is drawn for a phone."""
