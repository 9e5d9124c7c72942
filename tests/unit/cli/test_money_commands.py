"""Estimate, quote, variation and invoice, from the files to the papers."""

import csv
import json
import shutil
from fractions import Fraction
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from pypdf import PdfReader

from longpoint.cli.main import main

EXAMPLES = Path(__file__).parents[3] / "examples"
COUNTS, HOUSE = "wren-counts.toml", "wren-house.toml"


def run(*words: object) -> Result:
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Return a folder with example files, a quote, its variation and an invoice."""
    made = tmp_path_factory.mktemp("money")
    for name in (COUNTS, HOUSE, "rates.toml"):
        shutil.copy(EXAMPLES / name, made)
    papers = made / "papers"
    rates = made / "rates.toml"
    told = [
        run(
            *("quote", made / COUNTS, "--rates", rates, "--out", papers),
            *("--number", "Q-7", "--on", "2026-03-02"),
        ),
        run("variation", papers, made / HOUSE, "--on", "2026-04-20"),
        run(
            *("invoice", papers, "--number", "12", "--signed", 1, "2026-04-21"),
            *("--paid", "400", "2026-03-05", "--on", "2026-05-08"),
        ),
    ]
    assert [each.exit_code for each in told] == [0, 1, 0], [each.output for each in told]
    return made


def rows_of(path: Path) -> list[dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def pence(exact: Fraction) -> int:
    """Round to the penny, halves away from zero: another way than the program's own."""
    sign = -1 if exact < 0 else 1
    return sign * int(abs(exact) * 100 + Fraction(1, 2))


@pytest.mark.parametrize("name", ["quote", "variation-1"])
def test_the_sums_of_a_paper_come_out_when_reckoned_again_from_its_rows(
    folder: Path, name: str
) -> None:
    rows = rows_of(folder / "papers" / f"{name}.csv")
    priced = [row for row in rows if row["kind"] in ("work", "timber")]
    below = {row["kind"]: Fraction(row["amount"]) for row in rows if row not in priced}

    assert len(priced) >= 3
    for row in priced:
        exact = Fraction(row["quantity"]) * Fraction(row["each"])
        assert pence(exact) == Fraction(row["amount"]) * 100
    net = sum((Fraction(row["amount"]) for row in priced), Fraction(0))
    assert below["net"] == net
    assert below["tax"] * 100 == pence(net / 5)
    assert below["gross"] == below["net"] + below["tax"]


def test_what_is_due_is_what_the_other_papers_say_less_what_is_paid(folder: Path) -> None:
    papers = folder / "papers"
    gross = sum(
        Fraction(row["amount"])
        for name in ("quote", "variation-1")
        for row in rows_of(papers / f"{name}.csv")
        if row["kind"] == "gross"
    )
    (due,) = (r for r in rows_of(papers / "invoice-12.csv") if r["kind"] == "due")

    assert Fraction(due["amount"]) == gross - 400


@pytest.mark.parametrize("name", ["quote", "variation-1", "invoice-12"])
def test_every_paper_is_a_pdf_with_its_sums_in_it(folder: Path, name: str) -> None:
    text = "\n".join(
        page.extract_text() for page in PdfReader(folder / "papers" / f"{name}.pdf").pages
    )
    plain = (folder / "papers" / f"{name}.txt").read_text(encoding="utf-8")
    page = (folder / "papers" / f"{name}.html").read_text(encoding="utf-8")

    for row in rows_of(folder / "papers" / f"{name}.csv"):
        if row["kind"] in ("gross", "due"):
            figure = f"{abs(float(row['amount'])):,.2f}"
            assert figure in text
            assert figure in plain
            assert figure in page


def test_a_quote_that_was_given_is_never_written_over(folder: Path) -> None:
    before = (folder / "papers" / "quote.json").read_bytes()
    again = run(
        *("quote", folder / COUNTS, "--rates", folder / "rates.toml", "--out", folder / "papers"),
        *("--number", "Q-8"),
    )

    assert again.exit_code == 2
    assert "never written over" in again.output
    assert (folder / "papers" / "quote.json").read_bytes() == before


def test_a_quote_that_was_changed_by_hand_makes_no_invoice(folder: Path, tmp_path: Path) -> None:
    papers = tmp_path / "papers"
    shutil.copytree(folder / "papers", papers)
    document = json.loads((papers / "quote.json").read_text(encoding="utf-8"))
    document["rows"][0]["amount"] = "1.00"
    (papers / "quote.json").write_text(json.dumps(document), encoding="utf-8")

    done = run("invoice", papers, "--number", "13")
    assert done.exit_code == 2
    assert "was changed after it was given" in done.output


@pytest.mark.parametrize(
    "words",
    [
        ("--signed", "9", "2026-04-21"),
        ("--signed", "1", "soon"),
        ("--paid", "much", "2026-04-21"),
        ("--paid", "1.005", "2026-04-21"),
    ],
)
def test_what_cannot_be_billed_is_refused(folder: Path, words: tuple[str, ...]) -> None:
    done = run("invoice", folder / "papers", "--number", "14", *words)

    assert done.exit_code == 2
    assert len(done.output.strip().splitlines()) == 3
    assert not (folder / "papers" / "invoice-14.pdf").exists()


def test_a_number_that_is_no_file_name_is_refused(folder: Path) -> None:
    assert run("invoice", folder / "papers", "--number", "../14").exit_code == 2


def test_an_estimate_without_rates_says_hours_and_no_money(folder: Path, tmp_path: Path) -> None:
    done = run("estimate", folder / COUNTS, "--out", tmp_path / "est")

    assert done.exit_code == 0, done.output
    assert "No money: no rates file was named." in done.output
    assert "common practice, no source" in done.output
    assert (tmp_path / "est" / "estimate.pdf").exists()
    assert not (tmp_path / "est" / "estimate.csv").exists()


def test_rates_that_cannot_be_used_are_refused(folder: Path, tmp_path: Path) -> None:
    bad = tmp_path / "rates.toml"
    text = (folder / "rates.toml").read_text(encoding="utf-8")
    bad.write_text(text.replace('"GBP"', '"QUID"'), encoding="utf-8")

    done = run("estimate", folder / COUNTS, "--rates", bad)
    assert done.exit_code == 2
    assert "QUID" in done.output


def test_what_accuracy_is_worth_is_reckoned_from_readings_alone(folder: Path) -> None:
    words = ("--rates", folder / "rates.toml", "--accuracy")

    assert run("estimate", folder / COUNTS, *words).exit_code == 2
    assert run("estimate", folder / HOUSE, "--accuracy").exit_code == 2


def test_the_supervisor_sees_the_variations_of_a_quote(folder: Path, tmp_path: Path) -> None:
    given = run("handover", folder / HOUSE, "--out", tmp_path, "--papers", folder / "papers")
    assert given.exit_code in (0, 1), given.output
    page = (tmp_path / "supervisor.html").read_text(encoding="utf-8")
    gross = {row["kind"]: row for row in rows_of(folder / "papers" / "variation-1.csv")}["gross"]
    _, told = page.split("Variation 1 of 20 April 2026 to quote Q-7: ")
    assert told.startswith(("-£", "\N{MINUS SIGN}£"))
    assert told[2:].startswith(f"{gross['amount'].removeprefix('-')}. Not to be begun")
    refused = run("handover", folder / HOUSE, "--out", tmp_path, "--papers", tmp_path)
    assert refused.exit_code == 2
