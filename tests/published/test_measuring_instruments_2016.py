"""Limits of error of material measures of length.

Source: Measuring Instruments Regulations 2016 (UK SI 2016/1153), Schedule 1I (MI-008), Chapter I,
paragraph 2 and Table 1, which carries over Directive 2014/32/EU, Annex X. Read in a copy.

The limit is a + b L, L in metres rounded up to a whole metre, and c more where the length starts at
an end face, as a hook does.
"""

from pathlib import Path

import pytest

from longpoint.survey.instruments import CLASS_LIMITS, Tape, TapeClass
from tests.published.reference import rows

# a [mm], b [mm per m], c [mm], as printed in Table 1.
TABLE_1 = {
    TapeClass.I: (0.1, 0.1, 0.1),
    TapeClass.II: (0.3, 0.2, 0.2),
    TapeClass.III: (0.6, 0.4, 0.3),
}

# Class, length [mm], limit, limit from an end face [mm]: worked by hand from the rule as read.
WORKED = [
    (TapeClass.I, 2000.0, 0.3, 0.4),
    (TapeClass.I, 2350.0, 0.4, 0.5),
    (TapeClass.I, 3600.0, 0.5, 0.6),
    (TapeClass.I, 5000.0, 0.6, 0.7),
    (TapeClass.II, 900.0, 0.5, 0.7),
    (TapeClass.II, 2000.0, 0.7, 0.9),
    (TapeClass.II, 2350.0, 0.9, 1.1),
    (TapeClass.II, 3600.0, 1.1, 1.3),
    (TapeClass.II, 5000.0, 1.3, 1.5),
    (TapeClass.III, 2350.0, 1.8, 2.1),
    (TapeClass.III, 5000.0, 2.6, 2.9),
]


@pytest.mark.parametrize("tape_class", TapeClass)
def test_our_classes_are_those_of_table_1(tape_class: TapeClass) -> None:
    ours = CLASS_LIMITS[tape_class]
    assert (ours.a_mm, ours.b_mm_per_m, ours.c_mm) == TABLE_1[tape_class]


@pytest.mark.parametrize(("tape_class", "length_mm", "limit_mm", "from_end_face_mm"), WORKED)
def test_our_limit_is_that_of_the_rule(
    tape_class: TapeClass, length_mm: float, limit_mm: float, from_end_face_mm: float
) -> None:
    tape = Tape(name="T1", tape_class=tape_class)
    free_mm = tape.max_permissible_error_mm(length_mm, from_hook=False)
    assert free_mm == pytest.approx(limit_mm, abs=1e-9)
    assert tape.max_permissible_error_mm(length_mm) == pytest.approx(from_end_face_mm, abs=1e-9)


def test_the_figures_here_are_those_of_the_reference_values(shared: Path) -> None:
    known = rows(shared)
    for tape_class, abc in TABLE_1.items():
        assert known[f"INS-{tape_class}"].numbers() == list(abc)
    for tape_class, length_mm, limit_mm, from_end_face_mm in WORKED:
        metres = f"{length_mm / 1000.0:.2f}"
        row = known[f"INS-{tape_class}-{metres.removesuffix('0')}"]
        assert row.numbers() == [limit_mm, from_end_face_mm]
        assert row.how_known == "read"
