import itertools

import pytest

from longpoint.sticks.lay.lean_states import Lean, LeanBits, state_of


@pytest.mark.parametrize("leans", list(itertools.combinations_with_replacement(Lean, 4)))
def test_bits_tell_the_state_of_every_set_of_pieces(leans: tuple[Lean, ...]) -> None:
    told = LeanBits(leans)
    for bits in range(1 << len(leans)):
        chosen = [lean for index, lean in enumerate(leans) if bits >> index & 1]
        assert told.state(bits) is state_of(chosen)
