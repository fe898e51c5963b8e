"""`lineage.core.rounding` for whole arrays: exact where a float is, rounded outward where none is."""

from __future__ import annotations

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]


def _sum_error(a: Floats, b: Floats, total: Floats) -> Floats:
    part = total - a
    error: Floats = (a - (total - part)) + (b - part)
    return error


def add_down(a: Floats, b: Floats) -> Floats:
    """Return the largest floats that are at most ``a + b``."""
    total: Floats = a + b
    over = _sum_error(a, b, total) < 0
    if over.any():
        total[over] = np.nextafter(total[over], -np.inf)
    return total


def add_up(a: Floats, b: Floats) -> Floats:
    """Return the smallest floats that are at least ``a + b``."""
    total: Floats = a + b
    under = _sum_error(a, b, total) > 0
    if under.any():
        total[under] = np.nextafter(total[under], np.inf)
    return total


def mean_down(a: Floats, b: Floats) -> Floats:
    """Return floats at most the means, equal to them where they are floats."""
    total = add_down(a, b)
    half: Floats = total * 0.5
    over = half + half > total
    if over.any():
        half[over] = np.nextafter(half[over], -np.inf)
    return half


def mean_up(a: Floats, b: Floats) -> Floats:
    """Return floats at least the means, equal to them where they are floats."""
    total = add_up(a, b)
    half: Floats = total * 0.5
    under = half + half < total
    if under.any():
        half[under] = np.nextafter(half[under], np.inf)
    return half
