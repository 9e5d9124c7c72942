import os
from collections.abc import Iterable
from dataclasses import replace

import pytest

from longpoint.cli import profiles_at_once
from longpoint.cli.profiles_at_once import at_once
from longpoint.cli.workers import Done
from longpoint.pieces.piece import Piece
from longpoint.solvers.highs import HighsSolver
from longpoint.speech.said import Said
from longpoint.sticks.effort import QUICK
from longpoint.sticks.plan import CutPlan
from longpoint.sticks.plan_sticks import plan_sticks
from longpoint.survey.house import House
from tests.random_sticks import house_of, house_pieces

OPENINGS = {"OG": 3, "SQ": 1, "EX": 2}
MANY = 6
"""Pieces that two of the profiles have."""


@pytest.fixture(autouse=True)
def two_cores(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: 2)
    monkeypatch.setattr(profiles_at_once, "MANY", MANY)


def three_profiles() -> tuple[tuple[Piece, ...], House]:
    house = house_of()
    (profile,) = house.profiles
    pieces = [
        replace(piece, profile=name, mark=f"{name}{piece.mark}", opening=f"{name}{piece.opening}")
        for seed, (name, openings) in enumerate(OPENINGS.items())
        for piece in house_pieces(seed, openings, width_mm=profile.width_mm)
    ]
    return tuple(pieces), replace(
        house,
        profiles=tuple(replace(profile, name=name) for name in OPENINGS),
        stock=tuple(replace(entry, profile=name) for name in OPENINGS for entry in house.stock),
    )


def test_what_is_planned_at_once_is_what_is_planned_one_by_one() -> None:
    pieces, house = three_profiles()

    here = plan_sticks(pieces, house, HighsSolver(), QUICK)
    there = plan_sticks(pieces, house, HighsSolver(), QUICK, at_once)

    assert there == here
    # Texts are equal by their English alone; what any other language is made of goes along.
    assert _messages(there) == _messages(here)
    assert len(_messages(there)) == len(OPENINGS)


def test_only_large_profiles_go_to_processes_and_what_none_answers_is_planned_here(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    asked = list[str]()

    def lost(tasks: Iterable[profiles_at_once.Task], *_: object) -> Iterable[Done[None]]:
        for place, task in enumerate(tasks):
            asked.append(task.job.profile)
            yield Done(place, None, 2)

    monkeypatch.setattr(profiles_at_once, "shared_out", lost)
    pieces, house = three_profiles()

    there = plan_sticks(pieces, house, HighsSolver(), QUICK, at_once)

    assert asked == ["OG", "EX"]
    assert there == plan_sticks(pieces, house, HighsSolver(), QUICK)


def test_where_no_process_can_be_started_all_is_planned_here(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def refused(*_: object) -> Iterable[Done[None]]:
        yield from ()
        raise PermissionError

    monkeypatch.setattr(profiles_at_once, "shared_out", refused)
    pieces, house = three_profiles()

    assert plan_sticks(pieces, house, HighsSolver(), QUICK, at_once).sticks


@pytest.mark.parametrize(("cores", "solves"), [(1, True), (None, True), (8, False)])
def test_one_core_or_no_solver_starts_no_process(
    cores: int | None, solves: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(os, "cpu_count", lambda: cores)
    monkeypatch.setattr(profiles_at_once, "shared_out", None)
    pieces, house = three_profiles()
    solver = HighsSolver() if solves else None

    assert plan_sticks(pieces, house, solver, QUICK, at_once).sticks


def _messages(plan: CutPlan) -> list[str]:
    return [proof.solver.message for proof in plan.proofs if isinstance(proof.solver, Said)]
