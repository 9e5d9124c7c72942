import numpy as np
from hypothesis import given
from hypothesis import strategies as st
from scipy.sparse import csr_matrix
from scipy.sparse.csgraph import maximum_bipartite_matching

from longpoint.sticks.order.matching import most_pairs


@given(st.lists(st.lists(st.integers(0, 6), max_size=4, unique=True), max_size=7))
def test_as_many_pairs_are_made_as_by_a_general_purpose_library(wanted: list[list[int]]) -> None:
    table = np.zeros((len(wanted) or 1, 7))
    for left, rights in enumerate(wanted):
        table[left, rights] = 1
    theirs = maximum_bipartite_matching(csr_matrix(table), perm_type="column")
    assert most_pairs(wanted) == int((theirs >= 0).sum())
