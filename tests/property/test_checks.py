"""Whatever was written down, the checks answer in findings and never stop the house."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from longpoint.errors import Finding, Severity
from longpoint.quantities.formatting import format_length
from longpoint.quantities.length import Units
from longpoint.shape.opening_fit import fit_openings
from longpoint.shape.slips import check_closure
from longpoint.survey.checks import accepted, check_survey
from longpoint.survey.house import House
from longpoint.survey.openings import Arch, Nominal, Opening, OpeningKind
from longpoint.survey.readings import AngleReading, Gauge, OpeningReadings, Place, Plane, Reading
from tests.drawn_openings import house_of, opening_of

lengths_mm = st.one_of(
    st.sampled_from((0.0, 0.5, 100.0, 1187.0, 100_000.0)),
    st.floats(0.0, 3000.0),
    st.integers(400, 2500).map(float),
)


@st.composite
def readings(draw: st.DrawFn) -> OpeningReadings:
    """Draw any readings at all: places missing, repeated, nought or absurd."""
    found = draw(st.lists(st.tuples(st.sampled_from(Place), lengths_mm), max_size=9))
    gauges = draw(st.lists(st.tuples(st.sampled_from(Gauge), st.floats(-200, 200)), max_size=4))
    off_mm = st.sampled_from((-40.0, -6.0, -1.0, 0.0, 1.0, 5.0))
    plane = Plane(tl_mm=draw(off_mm), tr_mm=draw(off_mm), br_mm=draw(off_mm), bl_mm=draw(off_mm))
    return OpeningReadings(
        lengths=tuple(
            Reading(place=p, value_mm=mm, written=format_length(mm) if mm > 50 else "?")
            for p, mm in found
        ),
        angles=tuple(AngleReading(gauge=g, value_deg=deg, u_deg=0.2) for g, deg in gauges),
        plane=draw(st.sampled_from((None, plane))),
        tape="T1",
    )


@st.composite
def openings(draw: st.DrawFn) -> Opening:
    """Draw an opening around any readings."""
    nominal = st.builds(Nominal, width_mm=lengths_mm, height_mm=lengths_mm)
    arch = st.builds(Arch, rise_mm=lengths_mm, crown_mm=st.none() | lengths_mm)
    opening = opening_of(
        "?",
        draw(readings()),
        kind=draw(st.sampled_from(OpeningKind)),
        room=draw(st.sampled_from(("", "Unit 1", "Unit 2"))),
        batch=draw(st.sampled_from(("", "W1"))),
        nominal=draw(st.none() | nominal),
    )
    return replace(
        opening,
        arch=draw(st.none() | arch),
        raked=draw(st.booleans()),
        faces=2,
        readings_b=draw(st.none() | readings()),
    )


@st.composite
def houses(draw: st.DrawFn) -> House:
    """Draw a house of any openings, in either unit."""
    found = draw(st.lists(openings(), max_size=4))
    marked = (replace(opening, mark=f"O{i}") for i, opening in enumerate(found))
    return house_of(*marked, units=draw(st.sampled_from(Units)))


def said_of(house: House) -> tuple[Finding, ...]:
    fitted, findings = fit_openings(house)
    return (*check_survey(house), *findings, *check_closure(house, fitted))


@given(houses())
def test_no_readings_at_all_make_a_check_fail(house: House) -> None:
    marks = {o.mark for o in house.openings} | {o.room for o in house.openings} | {house.name}
    for finding in said_of(house):
        assert finding.place in marks
        assert all((finding.read, finding.wrong, finding.do))


@given(houses())
def test_what_is_said_does_not_depend_on_the_order_of_readings(house: House) -> None:
    turned = replace(
        house,
        openings=tuple(
            replace(o, readings=replace(o.readings, lengths=o.readings.lengths[::-1]))
            for o in house.openings
        ),
    )
    one = {(f.code, f.place, f.severity) for f in check_survey(house)}
    assert {(f.code, f.place, f.severity) for f in check_survey(turned)} == one


@given(houses())
def test_accepting_everything_leaves_only_the_stops_that_have_no_shape(house: House) -> None:
    said = said_of(house)
    codes = tuple({f.code for f in said})
    willing = replace(house, openings=tuple(replace(o, accept=codes) for o in house.openings))
    left = {f.code for f in accepted(said, willing) if f.severity is Severity.STOP}
    # Four sides far apart and no diagonal: the corners are free, so there is no shape either.
    assert left <= {"diagonal-missing", "impossible-opening", "no-shape"}
