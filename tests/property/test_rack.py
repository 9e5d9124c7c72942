"""The rack: slips in a label are caught, and no offcut is used twice or lost."""

import random
import tomllib
from collections import Counter
from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.pieces.piece import Piece
from longpoint.sticks.check import check_plan
from longpoint.sticks.effort import QUICK
from longpoint.sticks.news.at_the_saw import nothing_cut
from longpoint.sticks.news.kept_offcuts import after_plan, after_saw
from longpoint.sticks.news.settle_rack import settled
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from longpoint.survey.profiles import Offcut
from longpoint.survey.rack import Rack, RackPiece, rack_text, read_rack
from longpoint.survey.rack.for_house import usable
from longpoint.survey.rack.labels import LABEL_SIGNS, MOST_LABELS, is_label, label
from tests.random_sticks import house_of, house_pieces

DAY = date(2026, 1, 1)
HOUSES = 4


@given(st.integers(0, MOST_LABELS - 1))
def test_every_wrong_sign_and_every_swap_of_neighbours_is_caught(number: int) -> None:
    given_label = label(number)
    wrong = {
        given_label[:place] + sign + given_label[place + 1 :]
        for place in range(len(given_label))
        for sign in LABEL_SIGNS
    }
    wrong |= {
        given_label[:place] + given_label[place + 1] + given_label[place] + given_label[place + 2 :]
        for place in range(len(given_label) - 1)
    }

    assert is_label(given_label)
    assert not [each for each in wrong - {given_label} if is_label(each)]


def drawn_rack(draw: random.Random, house: House, count: int) -> Rack:
    """A rack on which lengths come twice, so that the older has to be taken."""
    rack, key = Rack().with_section(house.profile("OG"))
    for _ in range(count):
        rack, _ = rack.with_piece(
            RackPiece(
                label="",
                section=key,
                length_mm=float(draw.choice((640, 900, 1230, 1500, 2150, 2300))),
                put_up=DAY + timedelta(days=draw.randrange(300)),
            )
        )
    return rack


def with_offcuts(house: House, rack: Rack) -> House:
    offcuts = (
        Offcut(profile=profile.name, length_mm=piece.length_mm, label=piece.label)
        for piece, profile in usable(house, rack)
    )
    return replace(house, offcuts=tuple(offcuts))


def used_in(rack: Rack, house: House, pieces: tuple[Piece, ...]) -> tuple[list[str], Rack]:
    """Plan a house with the rack, settle it, and return what it used and the rack after it."""
    stocked = with_offcuts(house, rack)
    plan = plan_sticks(pieces, stocked, None, QUICK)
    check_plan(plan, pieces, stocked)
    assert not plan.unplaced
    found = [stick.label for stick in plan.sticks if stick.label]
    lengths = {piece.label: piece.length_mm for piece in rack.there}
    assert all(lengths[s.label] == s.length_mm for s in plan.sticks if s.label)

    after = after_plan(plan, pieces)
    assert after_saw(nothing_cut(plan), pieces, stocked).used == after.used
    done = settled(rack, after, house, "7XKQ4M", DAY)
    assert done.taken == tuple(found)
    assert settled(done.rack, after, house, "7XKQ4M", DAY).rack == done.rack
    return found, done.rack


@pytest.mark.parametrize(("seed", "reversible"), [(1, False), (2, True)])
def test_through_several_houses_every_offcut_is_used_once_at_most_and_none_is_lost(
    seed: int, reversible: bool
) -> None:
    draw = random.Random(seed)
    base = house_of(reversible=reversible)
    rack = drawn_rack(draw, base, count=14)
    used: Counter[str] = Counter()
    for number in range(HOUSES):
        house = replace(base, name=f"House {number}")
        before = {piece.label for piece in rack.pieces}
        found, after = used_in(
            rack, house, house_pieces(10 * seed + number, openings=draw.randint(3, 8))
        )
        used.update(found)
        assert before <= {piece.label for piece in after.pieces}
        assert not set(found) & {piece.label for piece in after.there}
        left = {(p.length_mm): p.put_up for p in reversed(after.there) if p.house == ""}
        for piece in rack.there:
            if piece.label in found and piece.length_mm in left and not piece.house:
                assert piece.put_up <= left[piece.length_mm], "an older one of that length stays"
        assert read_rack(tomllib.loads(rack_text(after))) == after
        rack = after
    assert used
    assert max(used.values()) == 1
