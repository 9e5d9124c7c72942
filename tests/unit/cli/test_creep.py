from pathlib import Path

from click.testing import Result

from tests.unit.cli.house_files import longpoint


def checked(folder: Path, *rows: str, options: tuple[str, ...] = ()) -> Result:
    table = folder / "checks.csv"
    table.write_text("\n".join(("piece,wanted,measured", *rows)) + "\n", encoding="utf-8")
    return longpoint("creep", table, *options)


def test_a_creep_is_told_in_three_sentences_with_its_piece(tmp_path: Path) -> None:
    lengths = (1204, 1204, 1204, *[1204.5] * 4)
    done = checked(tmp_path, *(f"W{n}-head,1204,{length}" for n, length in enumerate(lengths, 1)))

    assert done.exit_code == 1
    assert len(done.stdout.splitlines()) == 3
    assert "From about W4-head on they are 0.5 mm too long." in done.stdout


def test_a_stop_that_stands_is_done(tmp_path: Path) -> None:
    done = checked(tmp_path, "a,1204,1204", "b,904,904")

    assert done.exit_code == 0
    assert "None of it shows" in done.stdout


def test_one_piece_is_to_be_measured_again(tmp_path: Path) -> None:
    done = checked(tmp_path, "a,1204,1204", "b,904,902")

    assert done.exit_code == 1
    assert "Measure it again before you touch the stop" in done.stdout
    assert "2 mm too short" in done.stdout


def test_a_bad_row_is_named_and_the_rest_is_used(tmp_path: Path) -> None:
    done = checked(tmp_path, "a,1204,1204", "b,904,wide", "c,904,904")

    assert done.exit_code == 0
    assert "Row 3 was left out" in done.stderr
    assert "2 pieces" in done.stdout
    assert checked(tmp_path, "a,b,c").exit_code == 2


def test_inches(tmp_path: Path) -> None:
    rows = ("a,47 3/8,47 3/8", "b,47 3/8,47 1/2")
    done = checked(tmp_path, *rows, options=("--units", "in"))

    assert "1/8 in too long" in done.stdout
