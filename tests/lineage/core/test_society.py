"""On a society with every kind of plant both ways of computing, and of revising, agree."""

import numpy as np
import pytest

from lineage.core import Node, Pedigree, computing
from tests.benchmarks.lineage_data import CROSS, society

PLANTS = 6_000


@pytest.fixture(scope="module")
def columns():
    return society(PLANTS, seed=7)


def computed(columns, narrow, few_pairs):
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(computing, "NARROW", narrow)
        patch.setattr(computing, "FEW_PAIRS", few_pairs)
        return Pedigree.from_columns(**columns)


def same(a, b):
    """Tell whether two pedigrees of the same rows hold the same facts, classes numbered alike or not."""
    left, right = a.columns(), b.columns()
    for name in left:
        if name != "parentage_class":
            np.testing.assert_array_equal(left[name], right[name])
    pairs = set(zip(left["parentage_class"].tolist(), right["parentage_class"].tolist(), strict=True))
    for k, other in pairs:
        assert a.class_composition(k) == b.class_composition(other)


def test_class_by_class_and_level_by_level_agree(columns):
    same(computed(columns, 0, 100), computed(columns, 1 << 40, 1 << 40))


def test_many_revisions_are_as_good_as_a_pedigree_made_anew(columns):
    rng = np.random.default_rng(3)
    pedigree = Pedigree.from_columns(**columns)
    sown = np.flatnonzero(columns["origin"] == CROSS)
    oldest = columns["id"][columns["origin"] == 0].tolist()
    revised = {**columns, "parents": columns["parents"].copy()}
    for row in rng.choice(sown, 60, replace=False).tolist():
        id, pair = int(columns["id"][row]), rng.choice(oldest, 2, replace=False).tolist()
        before = pedigree.columns()
        changed = pedigree.revise([Node(id, "cross", parents=tuple(pair))])
        assert changed == changed_between(before, pedigree.columns()) | (changed & unseen(pedigree, id))
        begin = columns["parent_start"][row]
        revised["parents"][begin : begin + 2] = pair
    same(pedigree, Pedigree.from_columns(**revised))


def changed_between(before, after):
    """The ids of rows whose numbers differ."""
    names = [name for name in before if name not in ("id", "parentage_class")]
    differ = np.zeros(len(before["id"]), dtype=bool)
    for name in names:
        both_nan = (before[name] != before[name]) & (after[name] != after[name])
        differ |= (before[name] != after[name]) & ~both_nan
    return set(before["id"][differ].tolist())


def unseen(pedigree, id):
    """Plants below one, whose composition may change while their numbers do not."""
    return {id, *pedigree.descendants(id)}
