import itertools

import pytest

from longpoint.sticks.lay.lean_states import COUNTED, TURNED, Lean, LeanBits, state_of


@pytest.mark.parametrize(
    "leans",
    [
        leans
        for kind in (TURNED, COUNTED)
        for leans in itertools.combinations_with_replacement(kind, 4)
    ],
)
def test_bits_tell_the_state_of_every_set_of_pieces(leans: tuple[Lean, ...]) -> None:
    told = LeanBits(leans)
    for bits in range(1 << len(leans)):
        chosen = [lean for index, lean in enumerate(leans) if bits >> index & 1]
        assert told.state(bits) is state_of(chosen)
