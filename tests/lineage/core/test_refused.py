"""What cannot be a pedigree is refused, and the error names who is concerned."""

import pytest

from lineage.core import Node, Pedigree, PedigreeError

A = Node("A", "founder", composition={"andinum": 1})
B = Node("B", "founder", composition={"ridleyi": 1})


def refused(*nodes):
    with pytest.raises(PedigreeError) as caught:
        Pedigree(nodes)
    return caught.value


def test_nothing():
    assert refused().members == ()


def test_an_id_given_twice():
    assert refused(A, B, A).members == ("A",)


def test_none_as_an_id():
    assert "not known" in str(refused(Node(None, "unknown")))


def test_a_missing_parent():
    assert refused(A, Node("C", "cross", parents=("A", "Z"))).members == ("C", "Z")


def test_an_unknown_origin():
    error = refused(Node("C", "graft"))
    assert error.members == ("C",)
    assert "graft" in str(error)


@pytest.mark.parametrize(
    ("origin", "parents"),
    [
        ("founder", ("A",)),
        ("unknown", ("A",)),
        ("division", ()),
        ("division", ("A", "B")),
        ("self", ()),
        ("self", ("A", "B")),
        ("cross", ("A",)),
        ("cross", ("A", "B", "B")),
        ("mixed", ()),
        ("apogamous", ("A", "B")),
    ],
)
def test_a_wrong_number_of_parents(origin, parents):
    assert refused(A, B, Node("C", origin, parents=parents)).members == ("C",)


def test_a_selfing_mode_that_is_none():
    assert refused(A, Node("C", "self", parents=("A",), selfing="both")).members == ("C",)


@pytest.mark.parametrize("shares", [{}, {"andinum": 0.5}, {"andinum": 1.5, "ridleyi": -0.5}])
def test_shares_that_do_not_sum_to_one(shares):
    assert refused(Node("C", "founder", composition=shares)).members == ("C",)


def test_shares_that_are_not_dyadic():
    from fractions import Fraction

    thirds = {species: Fraction(1, 3) for species in ("andinum", "ridleyi", "wandae")}
    assert refused(Node("C", "founder", composition=thirds)).members == ("C",)


def test_a_composition_of_a_plant_with_parents():
    assert refused(A, Node("C", "self", parents=("A",), composition={"ridleyi": 1})).members == ("C",)


def test_selfs_excluded_of_one_plant_not_known():
    assert refused(A, Node("C", "mixed", parents=(None,), selfs_excluded=True)).members == ("C",)


def test_a_plant_that_is_not_here():
    pedigree = Pedigree([A])
    for ask in (pedigree.fact, pedigree.ancestors, pedigree.descendants):
        with pytest.raises(PedigreeError) as caught:
            ask("Z")
        assert caught.value.members == ("Z",)
    with pytest.raises(PedigreeError):
        pedigree.kinship("A", "Z")
