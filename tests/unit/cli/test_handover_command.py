from pathlib import Path

from tests.house_documents import window
from tests.unit.cli.house_files import heels, longpoint, written


def test_finished_work_is_judged_and_no_file_is_written_unasked(tmp_path: Path) -> None:
    house = written(
        tmp_path,
        window(as_built=heels(1.2)),
        handover={"place": "au-nsw", "handed_over": "2025-01-01"},
    )
    after_6 = longpoint("handover", house, "--on", "2025-07-01")
    assert after_6.exit_code == 0, after_6.output
    assert "4 fail by the guide" in after_6.output
    after_18 = longpoint("handover", house, "--on", "2026-07-01")
    assert "0 fail by the guide" in after_18.output
    assert list(tmp_path.iterdir()) == [house]


def test_its_sheets_are_written_as_pdf_and_pages(tmp_path: Path) -> None:
    done = longpoint("handover", written(tmp_path, window()), "--out", tmp_path / "out")
    assert done.exit_code == 0, done.output
    assert {path.name for path in (tmp_path / "out").iterdir()} == {
        "as-built.html", "painter.html", "supervisor.html", "as-found.html", "handover.pdf",
    }  # fmt: skip


def test_a_day_that_is_none_is_refused(tmp_path: Path) -> None:
    done = longpoint("handover", written(tmp_path, window()), "--on", "soon")
    assert done.exit_code == 2
