"""However deep a pedigree is, nothing recurses."""

import numpy as np
import pytest

from lineage.core import Node, Pedigree, PedigreeError, computing

DIVISION, SELF = 1, 2
LONG = 1_000_000
DEEP = 5_000


def chain(length, origin):
    """Columns of a founder, and plants each from the one before, the youngest first."""
    ids = np.arange(length, -1, -1)
    origins = np.full(length + 1, origin, dtype=np.uint8)
    origins[-1] = 0
    return {
        "id": ids,
        "origin": origins,
        "parent_start": np.append(np.arange(length + 1), length),
        "parents": ids[1:],
        "species": np.where(ids == 0, 4, -1).astype(np.int32),
        "selfing": np.zeros(length + 1, dtype=np.uint8),
    }


def test_a_clone_chain_of_a_million():
    pedigree = Pedigree.from_columns(**chain(LONG, DIVISION))
    fact = pedigree.fact(LONG)
    assert (fact.genet, fact.clonal_steps, fact.gen_max) == (0, LONG, 0)
    assert pedigree.kinship(LONG, 1) == (0.5, 0.5)


def test_relatives_along_a_clone_chain():
    pedigree = Pedigree.from_columns(**chain(LONG // 10, DIVISION))
    assert len(pedigree.ancestors(LONG // 10)) == len(pedigree.descendants(0)) == LONG // 10


def test_a_clone_circle_of_a_hundred_thousand():
    length = LONG // 10
    columns = chain(length, DIVISION)
    columns["origin"][-1] = DIVISION
    columns["parents"] = np.append(columns["parents"], length)
    columns["parent_start"] = np.arange(length + 2)
    columns["species"][:] = -1
    with pytest.raises(PedigreeError) as caught:
        Pedigree.from_columns(**columns)
    assert len(caught.value.members) == length + 1


@pytest.fixture(params=["class by class", "level by level"])
def way(request, monkeypatch):
    monkeypatch.setattr(computing, "NARROW", 0 if request.param == "level by level" else 1 << 40)


@pytest.mark.usefixtures("way")
def test_five_thousand_generations_of_selfs():
    pedigree = Pedigree.from_columns(**chain(DEEP, SELF))
    fact = pedigree.fact(DEEP)
    assert (fact.gen_min, fact.gen_max, fact.eq_generations) == (DEEP, DEEP, (DEEP, DEEP))
    assert fact.composition == {4: (1.0, 1.0)}
    assert pedigree.kinship(DEEP, 0) == (0.5, 0.5)


def test_five_thousand_generations_of_sib_crosses():
    nodes = [Node(("a", 0), "founder"), Node(("b", 0), "founder")]
    for t in range(1, DEEP + 1):
        nodes += [Node((sib, t), "cross", parents=(("a", t - 1), ("b", t - 1))) for sib in "ab"]
    pedigree = Pedigree(reversed(nodes))
    low, high = pedigree.fact(("a", DEEP)).inbreeding
    assert 1 - 1e-12 < low <= high <= 1
    assert low <= pedigree.kinship(("a", DEEP), ("b", DEEP))[0]
    assert ("a", 50) in pedigree.revise([Node(("a", 1), "self", parents=(("a", 0),), selfing="intra")])
    with pytest.raises(PedigreeError) as caught:
        pedigree.revise([Node(("a", 0), "self", parents=(("b", DEEP),))])
    assert len(caught.value.members) == DEEP + 1
