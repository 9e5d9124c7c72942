from datetime import date

from tests.audit import LOCKS, LOOKED_AT, ROOT, looked_at, pins_in, read_report

REPORT = {
    "dependencies": [
        {
            "name": "first",
            "version": "1.0",
            "vulns": [{"id": "PYSEC-1", "aliases": ["CVE-1"], "fix_versions": ["1.1"]}],
        },
        {"name": "second", "version": "2.0", "vulns": []},
        {"name": "third", "skip_reason": "not found"},
    ]
}
LOOKED = '[[looked_at]]\nadvisory = "CVE-1"\nwhy = "not reached"\nuntil = 2026-03-02\n'


def test_a_known_fault_is_told_with_the_version_that_mends_it() -> None:
    audit = read_report(REPORT, (), date(2026, 1, 1))
    assert audit.findings == ("first 1.0: PYSEC-1, mended in 1.1",)
    assert (audit.asked, audit.unknown) == (2, ("third",))


def test_what_was_looked_at_counts_anew_after_its_day() -> None:
    looked = looked_at(LOOKED)
    before = read_report(REPORT, looked, date(2026, 3, 1))
    assert (before.findings, before.looked_at) == ((), 1)
    assert read_report(REPORT, looked, date(2026, 3, 2)).findings


def test_the_list_of_what_was_looked_at_can_be_read() -> None:
    assert all(each.why for each in looked_at(LOOKED_AT.read_text(encoding="utf-8")))


def test_every_pin_of_the_locks_is_asked_for_with_its_sums() -> None:
    for lock in LOCKS:
        pins = list(pins_in((ROOT / lock).read_text(encoding="utf-8")))
        assert len(pins) > 10
        assert all("==" in pin and "--hash=" in pin for pin in pins)
