"""Columns in, columns out: the same facts as from nodes."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core import ORIGINS, Node, Pedigree, PedigreeError
from tests.lineage.core.generated import pedigrees

SPECIES = ["andinum", "ridleyi", "coronarium"]


def starts(counts):
    return np.concatenate([[0], np.cumsum(counts)]).astype(np.int64)


def as_columns(nodes, number):
    """The columns of nodes whose ids become the numbers given."""
    mixes = [[*(node.composition or {}).items()] for node in nodes]
    single = [len(mix) == 1 for mix in mixes]
    mixed = [[] if one else mix for one, mix in zip(single, mixes, strict=True)]
    code = {None: -1, **{name: place for place, name in enumerate(SPECIES)}}
    parents = [-1 if p is None else number[p] for node in nodes for p in node.parents]
    return {
        "id": np.array([number[node.id] for node in nodes], dtype=np.int64),
        "origin": np.array([ORIGINS.index(node.origin) for node in nodes], dtype=np.uint8),
        "parent_start": starts([len(node.parents) for node in nodes]),
        "parents": np.array(parents, dtype=np.int64),
        "species": np.array(
            [code[mix[0][0]] if one else -1 for one, mix in zip(single, mixes, strict=True)], dtype=np.int32
        ),
        "selfing": np.array([(None, "intra", "inter").index(n.selfing) for n in nodes], dtype=np.uint8),
        "selfs_excluded": np.array([node.selfs_excluded for node in nodes]),
        "sport": np.array([node.sport for node in nodes]),
        "by_name": np.array([node.by_name for node in nodes]),
        "mix_start": starts([len(mix) for mix in mixed]),
        "mix_species": np.array([code[name] for mix in mixed for name, _ in mix], dtype=np.int32),
        "mix_share": np.array([float(share) for mix in mixed for _, share in mix]),
    }


def numbered(nodes, step):
    return {node.id: 7 + step * place for place, node in enumerate(sorted(nodes, key=lambda n: n.id))}


def named(composition):
    return {name if name is None else SPECIES[name]: ends for name, ends in composition.items()}


@settings(deadline=None)
@given(pedigrees(), st.sampled_from([1, 3, 10**9]))
def test_facts_from_columns_are_those_from_nodes(nodes, step):
    number = numbered(nodes, step)
    pedigree, other = Pedigree(nodes), Pedigree.from_columns(**as_columns(nodes, number))
    columns = other.columns()
    for place, node in enumerate(nodes):
        fact, row = pedigree.fact(node.id), {name: column[place] for name, column in columns.items()}
        assert row["id"] == number[node.id]
        assert (row["genet"], row["clone_line"]) == (number[fact.genet], number[fact.clone_line])
        assert (row["clonal_steps"], row["gen_min"], row["gen_max"]) == (
            fact.clonal_steps,
            fact.gen_min,
            fact.gen_max,
        )
        assert (row["eq_lo"], row["eq_hi"]) == fact.eq_generations
        assert (row["f_lo"], row["f_hi"]) == fact.inbreeding
        assert (
            np.isnan(row["completeness"])
            if fact.completeness is None
            else row["completeness"] == fact.completeness
        )
        assert named(other.class_composition(row["parentage_class"])) == fact.composition


@settings(deadline=None)
@given(pedigrees())
def test_facts_of_columns_are_plain_python(nodes):
    pedigree = Pedigree.from_columns(**as_columns(nodes, numbered(nodes, 1)))
    for id in numbered(nodes, 1).values():
        fact = pedigree.fact(id)
        ends = [*fact.eq_generations, *fact.inbreeding, *pedigree.kinship(id, 7)]
        ends += [end for pair in fact.composition.values() for end in pair]
        assert {type(end) for end in ends} == {float}
        assert {type(x) for x in (fact.genet, fact.ortet, fact.clone_line, fact.clonal_steps)} == {int}
        assert {type(fact.gen_min), type(fact.gen_max)} == {int}
        assert type(fact.completeness) in (float, type(None))
        assert {type(species) for species in fact.composition} <= {int, type(None)}


def test_columns_of_named_nodes_hold_their_names():
    columns = Pedigree([Node("A", "founder"), Node(("B", 2), "division", parents=("A",))]).columns()
    assert columns["id"].tolist() == ["A", ("B", 2)]
    assert columns["genet"].tolist() == ["A", "A"]


def test_sibs_of_one_sowing_share_a_class_and_other_sowings_do_not():
    sibs = [Node(f"sib {n}", "cross", parents=("A", "B")) for n in range(3)]
    rest = [Node("pup", "division", parents=("sib 0",)), Node("selfed", "self", parents=("A",))]
    pedigree = Pedigree([Node("A", "founder"), Node("B", "founder"), *sibs, *rest])
    classes = pedigree.columns()["parentage_class"].tolist()
    assert classes[2] == classes[3] == classes[4] == classes[5]
    assert len(set(classes)) == 3


PAIR = {
    "id": np.array([5, 9]),
    "origin": np.array([0, 2], dtype=np.uint8),
    "parent_start": np.array([0, 0, 1]),
    "parents": np.array([5]),
    "species": np.array([3, -1], dtype=np.int32),
    "selfing": np.array([0, 1], dtype=np.uint8),
}


@pytest.mark.parametrize(
    ("wrong", "members"),
    [
        ({"id": np.array([5, 5])}, (5,)),
        ({"id": np.array([5, -1])}, (-1,)),
        ({"parents": np.array([6])}, (9, 6)),
        ({"parents": np.array([9])}, (9,)),
        ({"origin": np.array([0, 3])}, (9,)),
        ({"origin": np.array([0, 7])}, ()),
        ({"selfing": np.array([0, 3])}, ()),
        ({"species": np.array([3, 3])}, ()),
        ({"species": np.array([3])}, ()),
        ({"parent_start": np.array([0, 1])}, ()),
        ({"sport": np.array([True])}, ()),
        ({"mix_start": np.array([0, 1, 1])}, ()),
    ],
)
def test_columns_that_do_not_fit_are_refused(wrong, members):
    with pytest.raises(PedigreeError) as caught:
        Pedigree.from_columns(**{**PAIR, **wrong})
    assert caught.value.members == members


def test_no_rows_are_refused():
    with pytest.raises(PedigreeError):
        Pedigree.from_columns(**{name: column[:0] for name, column in PAIR.items()})


def test_a_pedigree_from_columns_is_revised_like_any_other():
    pedigree = Pedigree.from_columns(**PAIR)
    pup = Node(7, "division", parents=(9,))
    assert pedigree.revise([pup, Node("named", "founder", composition={3: 1})]) == {7, "named"}
    columns = pedigree.columns()
    assert columns["id"].tolist() == [5, 9, 7, "named"]
    assert columns["genet"].tolist() == [5, 9, 9, "named"]
    assert pedigree.revise(removed=["named", 7]) == set()
    columns = pedigree.columns()
    assert columns["id"].tolist() == [5, 9]
    assert columns["id"].dtype == columns["genet"].dtype == np.int64
    assert pedigree.revise([Node(5, "founder", composition={4: 1})]) == {5, 9}
    assert pedigree.class_composition(pedigree.columns()["parentage_class"][1]) == {4: (1.0, 1.0)}


def test_a_class_that_is_not_there():
    with pytest.raises(PedigreeError):
        Pedigree.from_columns(**PAIR).class_composition(99)
