"""Sums and halves of floats that are exact where they can be, and rounded outward where they cannot.

The error of a sum is itself a float (Knuth, *The Art of Computer Programming* vol. 2, 4.2.2, theorem B),
so its sign says on which side of the true sum the computed one lies. All arguments are finite and at
least 0.
"""

from __future__ import annotations

from math import inf, nextafter


def _sum_error(a: float, b: float, total: float) -> float:
    part = total - a
    return (a - (total - part)) + (b - part)


def add_down(a: float, b: float) -> float:
    """Return the largest float that is at most ``a + b``."""
    total = a + b
    return total if _sum_error(a, b, total) >= 0 else nextafter(total, -inf)


def add_up(a: float, b: float) -> float:
    """Return the smallest float that is at least ``a + b``."""
    total = a + b
    return total if _sum_error(a, b, total) <= 0 else nextafter(total, inf)


def mean_down(a: float, b: float) -> float:
    """Return a float at most the mean of the two, equal to it where it is a float."""
    total = add_down(a, b)
    half = total * 0.5
    return half if half + half <= total else nextafter(half, -inf)


def mean_up(a: float, b: float) -> float:
    """Return a float at least the mean of the two, equal to it where it is a float."""
    total = add_up(a, b)
    half = total * 0.5
    return half if half + half >= total else nextafter(half, inf)
