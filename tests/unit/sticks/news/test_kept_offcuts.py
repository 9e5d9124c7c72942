from dataclasses import replace

import pytest

from longpoint.pieces.piece import CutKind, EndCut
from longpoint.sticks.news.at_the_saw import AtTheSaw, StickAtSaw, told
from longpoint.sticks.news.kept_offcuts import KeptOffcut, after_plan, after_saw, end_words
from longpoint.sticks.news.remains import whole
from longpoint.sticks.news.saw_news import BadZone, Cut, News, Spoiled, StickRead
from longpoint.sticks.plan import CutPlan, CutStick, Laid, StickSource
from tests.random_sticks import architrave_piece, house_of

# Trim 10, kerf 2.5. The head is 1132 from point to point.
HEAD = architrave_piece("W1-head", 1000.0, 45.0, 45.0)
LEG = architrave_piece("W1-leg", 1500.0, 45.0, 0.0)
HOUSE = house_of()
LAID = (
    Laid(piece="W1-leg", start_mm=10.0, end_mm=1576.0),
    Laid(piece="W1-head", start_mm=1580.0, end_mm=2712.0),
)


def at_saw(
    length_mm: float = 3600.0,
    source: StickSource = StickSource.STOCK,
    label: str = "",
    *laid: Laid,
) -> AtTheSaw:
    return AtTheSaw(
        sticks=(
            StickAtSaw(
                name="OG-1",
                profile="OG",
                length_mm=length_mm,
                source=source,
                next=laid,
                label=label,
            ),
        )
    )


def kept(state: AtTheSaw, *news: News) -> tuple[KeptOffcut, ...]:
    return after_saw(told(state, news), (HEAD, LEG), HOUSE).kept


def test_what_is_planned_leaves_what_the_sheets_say() -> None:
    stick = CutStick(
        name="OG-1",
        profile="OG",
        length_mm=3600.0,
        source=StickSource.OFFCUT,
        laid=LAID,
        used_mm=2722.0,
        left_mm=874.0,
        label="EMKR",
    )
    after = after_plan(CutPlan(sticks=(stick,)), (HEAD, LEG))

    assert after.used == ("EMKR",)
    # The head's outer edge is the longer, so the offcut's is the shorter.
    assert after.kept == (
        KeptOffcut(origin="OG-1", profile="OG", length_mm=874.0, left="mitre -45.0"),
    )


def test_behind_the_last_cut_a_kerf_and_the_trim_are_lost() -> None:
    (offcut,) = kept(at_saw(3600.0, StickSource.STOCK, "", *LAID))

    # From 2712 and the slanting cut of 2.5 x sqrt 2 to 3600 less the trim of 10.
    assert offcut.length_mm == pytest.approx(3590.0 - 2712.0 - 3.536, abs=0.01)
    assert (offcut.left, offcut.right) == ("mitre -45.0", "rough")


def test_behind_a_spoiled_piece_the_end_is_rough() -> None:
    (offcut,) = kept(
        at_saw(3600.0, StickSource.STOCK, "", *LAID), Cut(piece="W1-leg"), Spoiled(piece="W1-head")
    )

    assert offcut.left == "rough"


def test_a_piece_that_lay_turned_leaves_its_own_lean() -> None:
    turned = replace(LAID[1], turned=True)
    (offcut,) = kept(at_saw(3600.0, StickSource.STOCK, "", LAID[0], turned))

    assert offcut.left == "mitre 45.0"


def test_what_is_left_of_a_spoiled_piece_keeps_its_ends() -> None:
    rest = whole(HEAD, 4.0)
    assert rest is not None
    state = at_saw(3600.0, StickSource.STOCK, "", *LAID[:1], LAID[1])
    found = kept(state, Cut(piece="W1-leg"), Spoiled(piece="W1-head", rests=(rest,)))
    offcut = next(each for each in found if each.origin == "W1-head-rest-1")

    # Square to its inner edge: 1128 at the points less 66 at each end.
    assert offcut.length_mm == pytest.approx(996.0, abs=0.02)
    assert (offcut.left, offcut.right) == ("mitre 45.0", "mitre 45.0")


def test_a_bad_zone_parts_a_stick_in_two_offcuts() -> None:
    first, second = kept(
        at_saw(3600.0, StickSource.STOCK, ""), BadZone(stick="OG-1", from_mm=1000.0, to_mm=1100.0)
    )

    assert (first.origin, second.origin) == ("OG-1", "OG-1 part 2")
    assert (first.length_mm, second.length_mm) == (992.5, 2492.5)


def test_a_new_stick_that_nothing_is_cut_from_is_no_offcut() -> None:
    assert kept(at_saw(3600.0)) == ()
    assert kept(at_saw(3600.0), StickRead(stick="OG-1", length_mm=3500.0)) == ()


def test_an_offcut_of_the_rack_is_used_untouched_or_missing() -> None:
    def labels(*news: News, laid: tuple[Laid, ...] = LAID[:1]) -> tuple[tuple[str, ...], ...]:
        state = at_saw(1800.0, StickSource.OFFCUT, "EMKR", *laid)
        after = after_saw(told(state, news), (HEAD, LEG), HOUSE)
        return after.used, after.missing

    assert labels() == (("EMKR",), ())
    assert labels(laid=()) == ((), ())
    assert labels(StickRead(stick="OG-1", length_mm=0.0)) == ((), ("EMKR",))


@pytest.mark.parametrize(
    ("cut", "words"),
    [
        (None, "rough"),
        (EndCut(kind=CutKind.SQUARE), "square"),
        (EndCut(kind=CutKind.MITRE, mitre_deg=-44.96), "mitre -45.0"),
        (EndCut(kind=CutKind.BEVEL, bevel_deg=-0.01), "square"),
        (EndCut(kind=CutKind.COMPOUND, mitre_deg=31.6, bevel_deg=33.9), "mitre 31.6 bevel 33.9"),
        (EndCut(kind=CutKind.SCRIBE, bevel_deg=45.0), "rough"),
    ],
)
def test_an_end_is_told_in_words_that_a_label_holds(cut: EndCut | None, words: str) -> None:
    assert end_words(cut) == words
