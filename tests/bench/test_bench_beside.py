"""What the nester is measured beside still runs, and is held to its word."""

import statistics
from pathlib import Path

import pytest

from tests.bench.beside.answer import Answer, check_answer, first_fit, least_by_length
from tests.bench.beside.arc_flow import by_arc_flow, positions
from tests.bench.beside.cp_sat import by_cp_sat
from tests.bench.beside.flow import LEFT_OVER
from tests.bench.beside.vector_packing import by_vector_packing
from tests.bench.cutting_stock import CuttingStock, read_cutting_stock
from tests.bench.run_beside import Result, main, table, written

SMALL = CuttingStock(name="small", stick=10, lengths=((6, 2), (4, 3), (3, 2)))
"""30 on sticks of 10: 6 + 4, 6 + 4, 4 + 3 + 3 leave nothing over."""


def test_a_tiny_run_of_the_nester_and_the_flow(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "instances").mkdir()
    (tmp_path / "instances" / "small.txt").write_text(written(SMALL), encoding="ascii")
    (tmp_path / "index.csv").write_text("class,name,optimum\ntiny,small,3\n", encoding="ascii")
    assert read_cutting_stock(tmp_path / "instances" / "small.txt") == SMALL
    out = tmp_path / "results.csv"
    main([str(tmp_path), "--by", "longpoint,arc-flow", "--seconds", "5", "--out", str(out)])
    said = capsys.readouterr().out
    assert "| tiny | longpoint | 1 | 1 | 1 | 0 |" in said
    assert "| tiny | arc-flow | 1 | 1 | 1 | 0 |" in said
    assert len(out.read_text(encoding="utf-8").splitlines()) == 3
    # What is there already isn't done again, and gives the same table.
    main([str(tmp_path), "--by", "longpoint,arc-flow", "--seconds", "0", "--out", str(out)])
    assert capsys.readouterr().out.splitlines() == said.splitlines()[2:]


def test_the_flow_of_a_small_instance() -> None:
    graph = positions(SMALL)
    pieces = {
        (int(tail), int(head))
        for tail, head, kind in zip(graph.tails, graph.heads, graph.kinds, strict=True)
        if kind != LEFT_OVER
    }
    # 6 first; 4 from 0, 4 and 6; 3 from 0, 3, 4, 6.
    assert pieces == {(0, 6), (0, 4), (4, 8), (6, 10), (0, 3), (3, 6), (4, 7), (6, 9), (7, 10)}
    answer = by_arc_flow(SMALL, 5.0)
    check_answer(SMALL, answer, 3)
    assert answer.proved


def test_constraints_of_a_small_instance() -> None:
    pytest.importorskip("ortools")
    answer = by_cp_sat(SMALL, 5.0)
    check_answer(SMALL, answer, 3)
    assert answer.proved


def test_vector_packing_of_a_small_instance() -> None:
    pytest.importorskip("pyvpsolver")
    answer = by_vector_packing(SMALL, 5.0)
    check_answer(SMALL, answer, 3)
    assert answer.proved


@pytest.mark.parametrize(
    "answer",
    [
        Answer(sticks=((6, 4), (6, 4), (4, 3, 3, 3)), bound=3),
        Answer(sticks=((6, 4), (6, 4), (4, 3)), bound=3),
        Answer(sticks=((6, 4), (6, 4), (4, 3), (3,)), bound=5),
        Answer(bound=4),
    ],
    ids=["too full", "one missing", "bound above the plan", "bound above the optimum"],
)
def test_a_wrong_answer_is_refused(answer: Answer) -> None:
    with pytest.raises(ValueError, match="small"):
        check_answer(SMALL, answer, 3)


def test_first_fit_and_the_least_by_length() -> None:
    assert first_fit(SMALL) == [[6, 4], [6, 4], [4, 3, 3]]
    assert least_by_length(SMALL) == 3


def test_a_ratio_is_that_of_what_both_prove() -> None:
    results = [
        _result("longpoint", "a", 0.1, proved=True),
        _result("longpoint", "b", 0.3, proved=True),
        _result("longpoint", "c", 9.0, proved=False),
        _result("arc-flow", "a", 1.0, proved=True),
        _result("arc-flow", "b", 5.0, proved=True),
        _result("arc-flow", "c", 8.0, proved=True),
    ]
    line = table(results)[-1]
    both = statistics.median((1.0, 5.0)) / statistics.median((0.1, 0.3))
    assert line.endswith(f" {both:.1f} (2) |")


def _result(method: str, name: str, seconds: float, *, proved: bool) -> Result:
    return Result(
        group="g",
        name=name,
        method=method,
        optimum=3,
        sticks=3,
        bound=3 if proved else 2,
        proved=proved,
        seconds=seconds,
        cpu_seconds=seconds,
        peak_mb=50.0,
    )
