import pytest

from longpoint.forecast.tapping.lie import Tap, TapPlace
from longpoint.forecast.tapping.names import joint_name, piece_names, tap_words
from longpoint.shape.point import Point
from tests.unit.forecast.tapping.wall import Cut, Wall, board_of, door, polygon_set, set_of, window


def test_a_window_has_a_sill_piece_legs_and_a_head() -> None:
    names = [name.piece for name in piece_names(window())]
    assert names == ["sill piece", "right leg", "head", "left leg"]


def test_a_door_has_no_sill_piece() -> None:
    assert [name.piece for name in piece_names(door())] == ["right leg", "head", "left leg"]


def test_an_opening_out_of_square_keeps_its_names() -> None:
    racked = (Point(0, 0), Point(1000, 0), Point(1060, 900), Point(60, 900))
    assert piece_names(set_of(racked)) == piece_names(window())


@pytest.mark.parametrize("count", [3, 5, 6])
def test_other_sets_are_numbered(count: int) -> None:
    names = [name.piece for name in piece_names(polygon_set(count))]
    assert names == [f"piece {i + 1}" for i in range(count)]


@pytest.mark.parametrize(
    ("piece", "place", "move_mm", "words"),
    [
        (3, TapPlace.START, 0.8, "Left leg, top: tap out 0.8."),
        (3, TapPlace.END, -0.3, "Left leg, bottom: tap in 0.3."),
        (1, TapPlace.START, 0.8, "Right leg, bottom: tap out 0.8."),
        (1, TapPlace.SLIDE, -0.5, "Right leg: slide down 0.5."),
        (2, TapPlace.SLIDE, -0.4, "Head: slide right 0.4."),
        (2, TapPlace.END, -0.5, "Head, left end: down 0.5."),
        (0, TapPlace.SLIDE, 0.4, "Sill piece: slide right 0.4."),
        (0, TapPlace.START, 0.2, "Sill piece, left end: down 0.2."),
    ],
)
def test_a_tap_is_one_short_sentence(
    piece: int, place: TapPlace, move_mm: float, words: str
) -> None:
    assert tap_words(window(), Tap(piece=piece, place=place, move_mm=move_mm)) == words


@pytest.mark.parametrize("piece", range(4))
@pytest.mark.parametrize("place", list(TapPlace))
@pytest.mark.parametrize("move_mm", [-5.0, 5.0])
def test_the_words_say_where_the_wood_truly_goes(
    piece: int, place: TapPlace, move_mm: float
) -> None:
    frame = window()
    tap = Tap(piece=piece, place=place, move_mm=move_mm)
    boards = tuple(board_of(frame, i, Cut()) for i in range(4))
    wall = Wall(frame=frame, boards=boards, reveal_mm=((0.0, 0.0, 0.0),) * 4)
    moved = wall.tapped((tap,)).boards[piece].points[:2]
    ways = [
        (b.x_mm - a.x_mm, b.y_mm - a.y_mm)
        for a, b in zip(boards[piece].points[:2], moved, strict=True)
    ]
    dx, dy = max(ways, key=lambda way: abs(way[0]) + abs(way[1]))
    words = tap_words(frame, tap)
    if piece in (0, 2):
        way = ("right" if dx > 0 else "left") if abs(dx) > abs(dy) else ("up" if dy > 0 else "down")
        assert f" {way} 5.0." in words
    elif abs(dy) > abs(dx):
        assert f"slide {'up' if dy > 0 else 'down'} 5.0." in words
    else:
        is_out = (dx > 0) == (piece == 1)
        assert f"tap {'out' if is_out else 'in'} 5.0." in words
    if place is not TapPlace.SLIDE:
        end = moved[0 if place is TapPlace.START else 1]
        right, high = end.x_mm > 600.0, end.y_mm > 525.0
        where = ("top" if high else "bottom") if piece in (1, 3) else ("right" if right else "left")
        assert f", {where}" in words


def test_a_numbered_end_is_named_by_its_neighbour() -> None:
    tap = Tap(piece=5, place=TapPlace.END, move_mm=0.3)
    assert tap_words(polygon_set(6), tap) == "Piece 6, end at piece 1: tap out 0.3."


def test_a_joint_is_named_by_its_pieces() -> None:
    assert joint_name(window(), 2) == "the joint of head and left leg"
