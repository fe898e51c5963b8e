"""Where kinship would rest on too many pairs it is answered in parts, and at last by what is always true."""

from hypothesis import given, settings

from lineage.core import Node
from lineage.core.blocks import blocks_of
from lineage.core.computing import compute, compute_inbreeding, kinship_of
from lineage.core.frontier import Frontier
from lineage.core.kinship import TooManyPairs
from lineage.core.rows import rows_from_nodes
from lineage.core.sweep import sweep_inbreeding
from tests.lineage.core.generated import pedigrees
from tests.lineage.core.twin import Twin

CIRCLE = ("ab", "bc", "cd", "da")


def without_f(nodes):
    """A state whose F is to be computed, and the blocks of its classes."""
    state = compute(rows_from_nodes(nodes))
    parentages, table = state.parentages, state.table
    classes = (parentages.count > 0).nonzero()[0]
    table.f_lo[classes] = table.f_hi[classes] = -1
    return state, blocks_of(parentages, table.level, classes)


def state_with_cap(nodes, cap):
    """A state whose F was computed with a cap on pairs."""
    state, blocks = without_f(nodes)
    compute_inbreeding(state, blocks, cap)
    return state


def inbreeding(state, id):
    k = state.parentages.class_of[state.rows.ids.row_of(id)]
    return state.table.f_lo[k], state.table.f_hi[k]


def fits_in_one_go(nodes, cap):
    state, blocks = without_f(nodes)
    table, parentages = state.table, state.parentages
    try:
        sweep_inbreeding(
            table, blocks, parentages.mode, Frontier(parentages, table.level, table.f_lo, table.f_hi, cap)
        )
    except TooManyPairs:
        return False
    return True


def test_in_parts_it_is_as_exact():
    nodes = [Node(f"{sib}0", "founder") for sib in "abcd"]
    for t in range(1, 4):
        nodes += [
            Node(f"{one}{t}", "cross", parents=(f"{one}{t - 1}", f"{other}{t - 1}")) for one, other in CIRCLE
        ]
    enough = next(cap for cap in range(1000) if fits_in_one_go(nodes, cap))
    state, less = state_with_cap(nodes, enough), state_with_cap(nodes, enough - 1)
    assert inbreeding(state, "a3") == (3 / 16, 3 / 16)
    assert [inbreeding(less, node.id) for node in nodes] == [inbreeding(state, node.id) for node in nodes]


@settings(deadline=None)
@given(pedigrees(max_size=9))
def test_whatever_the_cap_the_bounds_hold(nodes):
    twin = Twin(nodes)
    for cap in (0, 1, 2, 5, 10, 1000):
        state = state_with_cap(nodes, cap)
        for row, node in enumerate(nodes):
            k = state.parentages.class_of[state.clones.root[row]]
            low, high = twin.f(twin.genet(node.id))
            assert state.table.f_lo[k] <= low
            assert high <= state.table.f_hi[k]
            if cap == 1000:
                assert (state.table.f_lo[k], state.table.f_hi[k]) == (low, high)


@settings(deadline=None)
@given(pedigrees(max_size=8))
def test_a_question_beyond_the_cap_is_answered_from_zero_to_the_more_inbred(nodes):
    twin, state = Twin(nodes), compute(rows_from_nodes(nodes))
    root = state.clones.root.tolist()
    for a in range(len(nodes)):
        low, high = twin.kinship(nodes[0].id, nodes[a].id)
        found = kinship_of(state, root[0], root[a], cap=0)
        assert found[0] <= low <= high <= found[1]
