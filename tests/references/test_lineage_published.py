"""Values printed in textbooks and papers. The kinship of two plants is half their additive relationship."""

import pytest

from lineage.core import Node, Pedigree


def founders(*ids):
    return [Node(id, "founder", composition={"bifurcatum": 1}) for id in ids]


def cross(id, *parents):
    return Node(id, "cross", parents=parents)


def exact(value):
    return (value, value)


class TestMrode:
    """Mrode, Linear Models for the Prediction of Animal Breeding Values, 3rd ed., Table 2.1."""

    @pytest.fixture
    def pedigree(self):
        crosses = [cross(3, 1, 2), cross(4, 1, None), cross(5, 4, 3), cross(6, 5, 2)]
        return Pedigree([*founders(1, 2), *crosses])

    @pytest.mark.parametrize(("plant", "f"), [(1, 0), (2, 0), (3, 0), (4, 0), (5, 1 / 8), (6, 1 / 8)])
    def test_inbreeding(self, pedigree, plant, f):
        assert pedigree.fact(plant).inbreeding == exact(f)

    @pytest.mark.parametrize(
        ("a", "b", "relationship"), [(5, 5, 1.125), (3, 6, 0.5625), (4, 6, 0.3125), (5, 6, 0.6875)]
    )
    def test_relationship(self, pedigree, a, b, relationship):
        assert pedigree.kinship(a, b) == exact(relationship / 2)


def test_the_tabular_method_as_taught():
    """Teaching example of the tabular method (course in quantitative genetics, KVL Copenhagen)."""
    half_known = [cross(id, 1, None) for id in (2, 3, 4)]
    pedigree = Pedigree([*founders(1), *half_known, cross(5, 2, 3), cross(6, 4, 3), cross(7, 5, 6)])
    assert [pedigree.fact(id).inbreeding for id in (5, 6, 7)] == [exact(1 / 8), exact(1 / 8), exact(7 / 32)]


class TestLange:
    """Lange, Applied Probability, Table 5.1; the formula is Wright 1922, Am. Nat. 56:330-338."""

    family = (
        *founders("A", "B", "C", "D", "E", "F"),
        *(cross(id, "A", "B") for id in ("ab1", "ab2", "ab3")),
        *(cross(id, "C", "D") for id in ("cd1", "cd2")),
        cross("ac", "A", "C"),
        cross("ab1e", "ab1", "E"),
        cross("ab2f", "ab2", "F"),
        cross("double1", "ab1", "cd1"),
        cross("double2", "ab2", "cd2"),
        cross("second1", "ab1e", "C"),
        cross("second2", "ab2f", "D"),
    )

    @pytest.mark.parametrize(
        ("relation", "parents", "f"),
        [
            ("half sibs", ("ab1", "ac"), 1 / 8),
            ("full sibs", ("ab1", "ab2"), 1 / 4),
            ("parent and offspring", ("A", "ab1"), 1 / 4),
            ("uncle and niece", ("ab3", "ab1e"), 1 / 8),
            ("first cousins", ("ab1e", "ab2f"), 1 / 16),
            ("double first cousins", ("double1", "double2"), 1 / 8),
            ("second cousins", ("second1", "second2"), 1 / 64),
        ],
    )
    def test_progeny_of_relatives(self, relation, parents, f):
        pedigree = Pedigree([*self.family, cross(relation, *parents)])
        assert pedigree.fact(relation).inbreeding == exact(f)


class TestFalconerAndMackay:
    """Falconer & Mackay 1996, Introduction to Quantitative Genetics, ch. 5; from memory."""

    def test_repeated_full_sib_mating(self):
        nodes = founders(("a", 0), ("b", 0))
        for t in range(1, 8):
            nodes += [cross((sib, t), ("a", t - 1), ("b", t - 1)) for sib in "ab"]
        pedigree = Pedigree(nodes)
        found = [pedigree.fact(("a", t)).inbreeding for t in range(1, 7)]
        assert found == [exact(f) for f in (0, 1 / 4, 3 / 8, 1 / 2, 19 / 32, 43 / 64)]

    def test_repeated_selfing(self):
        line = [Node(t, "self", parents=(t - 1,), selfing="inter") for t in range(1, 54)]
        pedigree = Pedigree([*founders(0), *line])
        assert [pedigree.fact(t).inbreeding for t in range(54)] == [exact(1 - 0.5**t) for t in range(54)]


class TestSelfingWithinOneProthallus:
    """Sessa, Testo & Watkins 2016, New Phytol. 211:1108-1119: wholly homozygous in one step."""

    def test_one_step_makes_it_wholly_inbred(self):
        pedigree = Pedigree([*founders(0), Node(1, "self", parents=(0,), selfing="intra")])
        assert pedigree.fact(1).inbreeding == exact(1)

    @pytest.mark.parametrize("generations", range(4))
    def test_two_such_sibs_are_as_related_as_the_parent_to_itself(self, generations):
        line = [Node(t, "self", parents=(t - 1,), selfing="inter") for t in range(1, generations + 1)]
        sibs = [Node(sib, "self", parents=(generations,), selfing="intra") for sib in ("sib 1", "sib 2")]
        pedigree = Pedigree([*founders(0), *line, *sibs])
        f = pedigree.fact(generations).inbreeding[0]
        assert pedigree.kinship("sib 1", "sib 2") == exact((1 + f) / 2)


class TestEquivalentGenerations:
    """Maignel et al. 1996; Boichard, Maignel & Verrier 1997, Genet. Sel. Evol. 29:5-23."""

    def test_two_parents_are_one(self):
        pedigree = Pedigree([*founders("A", "B"), cross("ab", "A", "B")])
        assert pedigree.fact("ab").eq_generations == exact(1)

    def test_four_grandparents_are_two(self):
        crosses = [cross("ab", "A", "B"), cross("cd", "C", "D"), cross("abcd", "ab", "cd")]
        pedigree = Pedigree([*founders("A", "B", "C", "D"), *crosses])
        assert pedigree.fact("abcd").eq_generations == exact(2)

    def test_two_grandparents_on_one_side_are_one_and_a_half(self):
        pedigree = Pedigree([*founders("A", "B", "C"), cross("ab", "A", "B"), cross("abc", "ab", "C")])
        assert pedigree.fact("abc").eq_generations == exact(1.5)

    def test_a_selfing_line_has_as_many_as_it_is_long(self):
        line = [Node(t, "self", parents=(t - 1,)) for t in range(1, 41)]
        pedigree = Pedigree([*founders(0), *line])
        assert [pedigree.fact(t).eq_generations for t in range(41)] == [exact(t) for t in range(41)]


class TestCompleteness:
    """MacCluer et al. 1983, J. Hered. 74:394-399, with five generations."""

    def full(self, id, generations):
        """A plant all of whose ancestors are recorded for so many generations."""
        if not generations:
            return founders(id)
        sides = [f"{id}{side}" for side in "ab"]
        return [cross(id, *sides), *(node for side in sides for node in self.full(side, generations - 1))]

    def test_both_parents_and_nothing_else(self):
        pedigree = Pedigree([*founders("A", "B"), cross("ab", "A", "B")])
        assert pedigree.fact("ab").completeness == pytest.approx(0.2, rel=1e-12)

    def test_one_parent_not_known(self):
        pedigree = Pedigree([*founders("A"), cross("a?", "A", None)])
        assert pedigree.fact("a?").completeness == 0

    def test_one_side_full_the_other_its_parent_only(self):
        pedigree = Pedigree([*self.full("full", 4), *founders("A"), cross("x", "full", "A")])
        assert pedigree.fact("x").completeness == pytest.approx(1 / 3, rel=1e-12)

    def test_all_known(self):
        assert Pedigree(self.full("x", 5)).fact("x").completeness == 1
