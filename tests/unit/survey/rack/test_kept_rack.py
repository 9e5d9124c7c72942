from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from longpoint.errors import SurveyError
from longpoint.journal import Entry
from longpoint.quantities.length import Units
from longpoint.survey.rack import (
    RACK_KEY,
    Gone,
    Out,
    Rack,
    RackPiece,
    Section,
    rack_changes,
    rack_now,
    rack_words,
    with_file,
)

DAY = date(2026, 3, 1)
SECTIONS = (
    ("OG57", Section(name="OG57", width_mm=57.0, thickness_mm=18.0)),
    ("WB200", Section(name="WB200", width_mm=200.0, thickness_mm=25.0, reversible=True)),
)
LENGTHS = st.floats(min_value=50.0, max_value=5000.0).map(lambda mm: round(mm, 2))


def written(
    bodies: Sequence[dict[str, Any]], first: int = 1, device: str = "laptop"
) -> list[Entry]:
    head = {"device": device, "at": "", "house": RACK_KEY}
    return [{**body, **head, "counter": n} for n, body in enumerate(bodies, start=first)]


def offcut(length_mm: float = 1310.0, **more: Any) -> RackPiece:  # noqa: ANN401
    said = {"section": "OG57", **more}
    return RackPiece(label="", length_mm=length_mm, put_up=DAY, **said)


def begun(*lengths_mm: float) -> Rack:
    rack = Rack(sections=SECTIONS)
    for length_mm in lengths_mm:
        rack, _ = rack.with_piece(offcut(length_mm))
    return rack


@st.composite
def racks(draw: st.DrawFn) -> list[Rack]:
    """Draw a rack after each of some things that were done to it."""
    rack = Rack(units=draw(st.sampled_from(Units)), sections=SECTIONS)
    found = [Rack(), rack]
    for _ in range(draw(st.integers(0, 6))):
        there = rack.there
        match draw(st.sampled_from(("put", "gone", "back", "mend", "age"))):
            case "put":
                section = draw(st.sampled_from([key for key, _ in SECTIONS]))
                said = draw(st.sampled_from(("", "primed", 'Wren\'s, "twisted"')))
                rack, _ = rack.with_piece(offcut(draw(LENGTHS), section=section, note=said))
            case "gone" if there:
                gone = Gone(why=draw(st.sampled_from(Out)), on=DAY, house=draw(st.just("Wren")))
                rack = rack.without(there[0].label, gone)
            case "back":
                rack = replace(rack, pieces=tuple(replace(p, gone=None) for p in rack.pieces))
            case "mend" if rack.pieces:
                last = replace(rack.pieces[-1], length_mm=draw(LENGTHS))
                rack = replace(rack, pieces=(*rack.pieces[:-1], last))
            case _:
                rack = replace(rack, old_after_days=draw(st.sampled_from((None, 30, 365))))
        found.append(rack)
    return found


@given(steps=racks(), seed=st.randoms(use_true_random=False))
def test_what_was_done_comes_to_the_same_rack_in_whatever_order_it_arrives(
    steps: list[Rack],
    seed: Any,  # noqa: ANN401
) -> None:
    entries: list[Entry] = []
    for before, after in pairwise(steps):
        entries += written(rack_changes(before, after), len(entries) + 1)
        shuffled = [*entries, *entries[:3]]
        seed.shuffle(shuffled)
        now = rack_now(shuffled)
        assert now.rack == after
        assert now.findings == ()
        assert rack_changes(after, now.rack) == ()


def test_a_label_whose_putting_up_was_taken_back_is_never_given_again() -> None:
    entries = written(rack_changes(Rack(), begun(1310.0)))
    undo = {"what": "undo", "of": {"device": "laptop", "counter": len(entries)}}
    rack = rack_now([*entries, *written([undo], len(entries) + 1)]).rack
    assert rack.pieces == ()
    (label,) = rack.spent
    assert rack.with_piece(offcut())[1].label != label


def test_one_label_on_two_offcuts_is_told_and_nothing_is_cut_from_the_second() -> None:
    first = written(rack_changes(Rack(), begun(1310.0)))
    other = written(rack_changes(Rack(), begun(2000.0)), device="van")
    now = rack_now([*other, *first])
    assert [piece.length_mm for piece in now.rack.pieces] == [1310.0]
    (finding,) = now.findings
    assert finding.code == "rack-label-twice"
    assert "2000 mm" in finding.read


def test_what_is_gone_before_it_was_put_up_or_of_a_later_version_changes_nothing() -> None:
    said = {"gone": "used", "gone_on": "2026-03-01"}
    gone = {"what": "offcut-gone", "label": "EMKR", "said": said}
    now = rack_now(written([gone, {"what": "offcut-painted", "label": "EMKR"}]))
    assert now.rack == Rack()


def test_what_says_nothing_of_a_rack_is_refused() -> None:
    with pytest.raises(SurveyError, match="says nothing of a rack"):
        rack_now(written([{"what": "offcut-put-up"}]))


def test_each_entry_has_its_words() -> None:
    rack = begun(1310.0)
    label = rack.pieces[0].label
    used = rack.without(label, Gone(why=Out.USED, on=DAY, house="Wren House"))
    thrown = rack.without(label, Gone(why=Out.THROWN, on=DAY))
    mended = replace(rack, old_after_days=90, pieces=(replace(rack.pieces[0], length_mm=1300.0),))
    steps = [(Rack(), rack), (rack, used), (used, rack), (rack, thrown), (rack, mended)]
    said = [rack_words(body) for step in steps for body in rack_changes(*step)]
    assert said == [
        "section OG57 described",
        "section WB200 described",
        f"{label} put up: OG57, 1310 mm",
        f"{label} gone: used, Wren House",
        f"{label} is on the rack again",
        f"{label} gone: thrown",
        "old_after = 90",
        f"{label} mended: OG57, 1300 mm",
    ]
    assert rack_words({"what": "offcut-painted"}).endswith("which a newer longpoint wrote")


def test_a_file_adds_and_mends_and_brings_nothing_back() -> None:
    kept = begun(1310.0, 2000.0)
    older = kept
    kept = kept.without(kept.pieces[0].label, Gone(why=Out.USED, on=DAY))
    file = replace(older, pieces=(older.pieces[0], replace(older.pieces[1], note="primed")))
    file, more = file.with_piece(offcut(900.0))
    found = with_file(kept, file)
    assert [piece.gone is None for piece in found.pieces] == [False, True, True]
    assert found.pieces[1].note == "primed"
    assert found.pieces[2] == more
    assert with_file(found, begun()) == found


def test_a_file_of_another_rack_is_refused() -> None:
    kept = begun(1310.0)
    other = replace(kept, pieces=(replace(kept.pieces[0], put_up=date(2025, 1, 1)),))
    with pytest.raises(SurveyError, match="another rack"):
        with_file(kept, other)
    wide = ("OG57", replace(SECTIONS[0][1], width_mm=69.0))
    with pytest.raises(SurveyError, match="another rack"):
        with_file(kept, Rack(sections=(wide,)))
