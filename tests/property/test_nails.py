"""No nail is ever longer than what it may enter, and a longer line never takes fewer nails."""

from hypothesis import given
from hypothesis import strategies as st

from longpoint.fixing.gauges import thickest_mm
from longpoint.fixing.nail_count import apart_mm, nails_along
from longpoint.fixing.nail_lines import PUNCHED_MM, Into
from longpoint.fixing.nailing import NEAREST_EDGE_MM, nail_house
from longpoint.pieces.piece import Role
from longpoint.survey.fixing import Nail
from tests.house_documents import the_house, window
from tests.unit.fixing.nailed import piece

ROLES = (Role.HEAD, Role.SILL, Role.RUN, Role.APRON, Role.STOP, Role.PLINTH_BLOCK)
nails = st.builds(
    Nail,
    gauge=st.sampled_from((15, 16, 18, 19)),
    length_mm=st.floats(10.0, 120.0),
    diameter_mm=st.one_of(st.none(), st.floats(0.5, 3.0)),
)
lengths = st.floats(0.0, 8000.0)


@given(
    role=st.sampled_from(ROLES),
    width=st.floats(20.0, 200.0),
    thickness=st.floats(8.0, 40.0),
    lining=st.floats(8.0, 60.0),
    packing=st.floats(0.0, 40.0),
    board=st.floats(5.0, 40.0),
    depth=st.floats(20.0, 150.0),
    held=st.lists(nails, max_size=4),
)
def test_the_nail_of_a_line_stays_in_what_it_may_enter(
    role: Role,
    width: float,
    thickness: float,
    lining: float,
    packing: float,
    board: float,
    depth: float,
    held: list[Nail],
) -> None:
    fixing = {"lining": lining, "packing": packing, "board": board, "stud_depth": depth}
    written = [f"{n.gauge} x {n.length_mm} mm" for n in held]
    told = the_house(openings=[window()], fixing={**fixing, "nails": written})
    made = nail_house(told, [piece(role, width_mm=width, thickness_mm=thickness)])
    for section in made.sections:
        for line in section.lines:
            if line.nail is None:
                assert line.why_none
                continue
            tip_mm = line.nail.length_mm + PUNCHED_MM - thickness
            match line.bed.into:
                case Into.LINING:
                    # From the line to the reveal's face, even if the grain turns the nail.
                    from_reveal = section.quirk_mm + line.from_edge_mm
                    assert tip_mm <= from_reveal - thickest_mm(line.nail) / 2.0 + 1e-6
                    assert from_reveal < lining
                case Into.STUD:
                    assert tip_mm < board + depth
                    assert line.nail.length_mm - thickness - board >= 25.0 - 1e-6
                case Into.JOIST:
                    raise AssertionError("no set goes to a ceiling")
                case Into.UNDER:
                    assert tip_mm < lining + packing + made.wall.stud_face.value_mm
            assert NEAREST_EDGE_MM - 1e-6 <= line.from_edge_mm <= width - NEAREST_EDGE_MM + 1e-6


@given(shorter=lengths, longer=lengths, first=st.floats(0.0, 100.0), apart=st.floats(50.0, 600.0))
def test_a_longer_line_takes_no_fewer_nails_and_none_stand_further_apart_than_told(
    shorter: float, longer: float, first: float, apart: float
) -> None:
    shorter, longer = sorted((shorter, longer))
    few, many = (nails_along(length, first, apart) for length in (shorter, longer))
    assert 1 <= few <= many
    assert apart_mm(longer, first, many) <= apart + 1e-6
