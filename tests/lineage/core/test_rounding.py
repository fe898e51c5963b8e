"""Sums and means are exact where a float is, and lie outside the truth by no more than one float."""

from fractions import Fraction
from math import inf, nextafter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineage.core import Node, Pedigree, rounding, rounding_columns

shares = st.one_of(
    st.floats(0, 5000), st.floats(0, 1), st.floats(0, 1e-300), st.sampled_from([0.0, 1.0, 5e-324])
)


@given(shares, shares)
def test_a_sum_is_enclosed_by_the_nearest_floats(a, b):
    low, high = rounding.add_down(a, b), rounding.add_up(a, b)
    assert Fraction(low) <= Fraction(a) + Fraction(b) <= Fraction(high)
    assert high in (low, nextafter(low, inf))


@given(shares, shares)
def test_a_mean_is_enclosed_and_exact_where_it_can_be(a, b):
    low, high = rounding.mean_down(a, b), rounding.mean_up(a, b)
    mean = (Fraction(a) + Fraction(b)) / 2
    assert Fraction(low) <= mean <= Fraction(high)
    assert (low == high) or Fraction(float(mean)) != mean


@given(st.lists(st.tuples(shares, shares), min_size=1))
def test_columns_are_rounded_like_single_numbers(pairs):
    a, b = np.array(pairs).T
    for name in ("add_down", "add_up", "mean_down", "mean_up"):
        single = [getattr(rounding, name)(x, y) for x, y in pairs]
        assert getattr(rounding_columns, name)(a, b).tolist() == single


def backcrosses(generations):
    """A hybrid crossed back to one of its founders again and again."""
    first = [Node("A", "founder", composition={"a": 1}), Node("B", "founder", composition={"b": 1})]
    line = [Node(t, "cross", parents=(t - 1 if t > 1 else "B", "A")) for t in range(1, generations + 1)]
    return Pedigree([*first, *line])


def test_fifty_two_backcrosses_are_exact():
    pedigree = backcrosses(52)
    for t in range(1, 53):
        half = Fraction(1, 2**t)
        assert pedigree.fact(t).composition == {"a": (1 - half, 1 - half), "b": (half, half)}


@pytest.mark.parametrize("t", [53, 54, 60, 100, 1000, 1074, 1100])
def test_beyond_that_the_bounds_close_on_the_truth_from_outside(t):
    composition = backcrosses(t).fact(t).composition
    for species, truth in (("a", 1 - Fraction(1, 2**t)), ("b", Fraction(1, 2**t))):
        low, high = composition[species]
        assert Fraction(low) <= truth <= Fraction(high)
        assert high - low <= max(5e-324, 1e-12 * high)


@pytest.mark.parametrize("t", [54, 80, 2000])
def test_selfing_beyond_fifty_three_generations_is_enclosed(t):
    line = [Node(i, "self", parents=(i - 1,), selfing="inter") for i in range(1, t + 1)]
    low, high = Pedigree([Node(0, "founder"), *line]).fact(t).inbreeding
    assert Fraction(low) <= 1 - Fraction(1, 2**t) <= Fraction(high)
    assert 1 - low < 1e-12


def test_kinship_of_sib_crosses_is_exact_for_twenty_six_generations():
    nodes = [Node(f"{sib}0", "founder") for sib in "ab"]
    for t in range(1, 27):
        nodes += [Node(f"{sib}{t}", "cross", parents=(f"a{t - 1}", f"b{t - 1}")) for sib in "ab"]
    pedigree = Pedigree(nodes)
    kinship, own = Fraction(0), Fraction(1, 2)
    for t in range(1, 27):
        own, kinship = (1 + kinship) / 2, (own + kinship) / 2
        assert pedigree.kinship(f"a{t}", f"b{t}") == (kinship, kinship)
        assert pedigree.kinship(f"a{t}", f"a{t}") == (own, own)
