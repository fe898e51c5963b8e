"""How the intervals of candidate parents become the interval of their offspring."""

from __future__ import annotations

from collections.abc import Sequence

from lineage.core.nodes import Interval
from lineage.core.parentage import CROSS, MIXED, SELF
from lineage.core.rounding import add_down, add_up, mean_down, mean_up


def combine(kind: int, parts: Sequence[Interval]) -> Interval:
    """Return the interval of a quantity that a plant inherits as the mean of its two parents.

    A self has its one parent's, a cross the mean; an unsettled plant, a self of any or a cross of any two,
    lies between the smallest and the largest; selfs excluded, between the means of the two smallest and of
    the two largest.
    """
    if kind == SELF:
        return parts[0]
    if kind == MIXED:
        return min(low for low, _ in parts), max(high for _, high in parts)
    if kind == CROSS:
        (low_a, high_a), (low_b, high_b) = parts
    else:
        low_a, low_b = sorted(low for low, _ in parts)[:2]
        high_a, high_b = sorted(high for _, high in parts)[-2:]
    return mean_down(low_a, low_b), mean_up(high_a, high_b)


def plus_one(part: Interval) -> Interval:
    """Return ``1 + x`` for the interval of x."""
    return add_down(1.0, part[0]), add_up(1.0, part[1])


def half_plus_half(part: Interval) -> Interval:
    """Return ``(1 + x) / 2`` for the interval of x: from F of a plant, its kinship with itself."""
    return mean_down(1.0, part[0]), mean_up(1.0, part[1])
