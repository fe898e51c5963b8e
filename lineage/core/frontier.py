"""Kinship of many pairs at once: the pairs they rest on are gathered level by level, then answered.

From the highest level down, each pair whose higher member lies there is expanded into pairs of that
member's parents with the other one; equal pairs are met once. From the bottom up they get their values.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from lineage.core.kinship import TooManyPairs
from lineage.core.parentage import CROSS, MIXED, MIXED_CROSS, Parentages, spans
from lineage.core.rounding_columns import mean_down, mean_up

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]

#: Pairs asked for, asked again included, before a frontier gives up: about 40 bytes each.
CAP = 6_000_000


@dataclass(slots=True)
class Asked:
    """Pairs asked for: where in a batch which pairs of which layer stand, and plants with themselves."""

    size: int
    own_at: Ints
    own: Ints
    shares: list[_Share] = field(default_factory=list)


@dataclass(slots=True)
class _Share:
    layer: _Layer
    at: Ints
    place: Ints


class _Layer:
    """Distinct pairs whose higher member is at one level; ``double`` if the other is at that level too."""

    # Expanded are the classes whose parents were asked for: one a pair, then once more those at ``twice``.
    __slots__ = ("asked", "chunks", "expanded", "high", "keys", "low", "shares", "twice")
    asked: Asked
    expanded: Ints
    twice: Ints
    keys: Ints
    low: Floats
    high: Floats

    def __init__(self) -> None:
        self.chunks: list[Ints] = []
        self.shares: list[_Share] = []

    def close(self) -> None:
        """Make the pairs distinct, and tell each share of a batch where its pairs now stand."""
        self.keys, inverse = np.unique(np.concatenate(self.chunks), return_inverse=True)
        begin = 0
        for share, chunk in zip(self.shares, self.chunks, strict=True):
            share.place = inverse[begin : begin + len(chunk)].astype(np.int32)
            begin += len(chunk)
        self.chunks, self.shares = [], []


class Frontier:
    """Bounds of kinship between ortets, many pairs at a time.

    Parameters
    ----------
    parentages, level
        The classes and the level of each.
    f_lo, f_hi
        Bounds of F by class; may still be written while levels go by in `sweep`.
    cap
        Pairs asked for before `TooManyPairs` is raised.
    """

    def __init__(
        self, parentages: Parentages, level: Ints, f_lo: Floats, f_hi: Floats, cap: int = CAP
    ) -> None:
        self._parentages = parentages
        self._level = level
        self._f_lo, self._f_hi = f_lo, f_hi
        self._layers: dict[int, _Layer] = {}
        self._left = cap

    def ask(self, a: Ints, b: Ints) -> Asked:
        """Ask for pairs of ortet rows (-1: a plant not known); answered once `sweep` has passed their level."""
        self._left -= len(a)
        if self._left < 0:
            raise TooManyPairs
        known = (a >= 0) & (b >= 0)
        own_at = np.flatnonzero(known & (a == b))
        asked = Asked(len(a), own_at, a[own_at])
        at = np.flatnonzero(known & (a != b))
        a, b = a[at], b[at]
        rank_a, rank_b = self._rank(a), self._rank(b)
        swap = (rank_a < rank_b) | ((rank_a == rank_b) & (a < b))
        # An unsettled plant ranks half a level above a settled one: it is the one expanded.
        layer = np.maximum(rank_a, rank_b) // 2 * 2 + (rank_a // 2 == rank_b // 2)
        key = np.where(swap, b, a) * len(self._parentages.class_of) + np.where(swap, a, b)
        self._sort_in(asked, at, layer, key)
        return asked

    def _rank(self, rows: Ints) -> Ints:
        k = self._parentages.class_of[rows]
        rank: Ints = self._level[k] * 2 + (self._parentages.kind[k] >= MIXED)
        return rank

    def _sort_in(self, asked: Asked, at: Ints, layer: Ints, key: Ints) -> None:
        if not len(layer):
            return
        if (layer == layer[0]).all():
            bounds = [0, len(layer)]
        else:
            order = np.argsort(layer, kind="stable")
            at, layer, key = at[order], layer[order], key[order]
            bounds = [0, *(np.flatnonzero(np.diff(layer)) + 1).tolist(), len(layer)]
        for first, last in pairwise(bounds):
            number = int(layer[first])
            if number < 2:  # two founders: unrelated
                continue
            into = self._layers.setdefault(number, _Layer())
            share = _Share(into, at[first:last].astype(np.int32), at[:0])
            into.chunks.append(key[first:last])
            into.shares.append(share)
            asked.shares.append(share)

    def sweep(self, at_level: Callable[[int], None], top: int = 0) -> None:
        """Expand all pairs asked for, then answer them upward, calling ``at_level`` as each level is reached.

        When it is called all pairs below that level are answered, and F of all lower levels must stand.
        """
        for number in range(max(self._layers, default=1), 1, -1):
            if number in self._layers:
                self._expand(self._layers[number])
        for level in range(1, max(top, max(self._layers, default=0) // 2) + 1):
            at_level(level)
            for number in (2 * level, 2 * level + 1):
                if number in self._layers:
                    self._settle(self._layers[number])

    def _expand(self, layer: _Layer) -> None:
        layer.close()
        x, y = np.divmod(layer.keys, len(self._parentages.class_of))
        kind = self._parentages.kind
        k_x, k_y = self._parentages.class_of[x], self._parentages.class_of[y]
        both = (kind[k_x] >= MIXED) & (kind[k_y] >= MIXED) & (self._level[k_x] == self._level[k_y])
        layer.twice = np.flatnonzero(both)
        layer.expanded = np.concatenate([k_x, k_y[layer.twice]])
        partner = np.concatenate([y, x[layer.twice]])
        count = self._parentages.count[layer.expanded]
        parents = self._parentages.parents[spans(self._parentages.begin[layer.expanded], count)]
        layer.asked = self.ask(parents, np.repeat(partner, count))

    def answer(self, asked: Asked) -> tuple[Floats, Floats]:
        """Return the lower and upper ends of all pairs asked for in one call, in its order."""
        low, high = np.zeros(asked.size), np.zeros(asked.size)
        if len(asked.own):
            k = self._parentages.class_of[asked.own]
            one = np.ones(len(k))
            low[asked.own_at], high[asked.own_at] = (
                mean_down(one, self._f_lo[k]),
                mean_up(one, self._f_hi[k]),
            )
        for share in asked.shares:
            low[share.at], high[share.at] = share.layer.low[share.place], share.layer.high[share.place]
        return low, high

    def _settle(self, layer: _Layer) -> None:
        low, high = self._inherit(layer.expanded, *self.answer(layer.asked))
        size = len(layer.keys)
        layer.low, layer.high = low[:size], high[:size]
        if len(layer.twice):
            layer.low[layer.twice] = np.maximum(layer.low[layer.twice], low[size:])
            layer.high[layer.twice] = np.minimum(layer.high[layer.twice], high[size:])
        del layer.asked

    def _inherit(self, classes: Ints, low: Floats, high: Floats) -> tuple[Floats, Floats]:
        """Combine the candidates' ends, which stand one after another, by the kind of each class."""
        count, kind = self._parentages.count[classes], self._parentages.kind[classes]
        begin = np.cumsum(count) - count
        out_low, out_high = np.minimum.reduceat(low, begin), np.maximum.reduceat(high, begin)
        cross = np.flatnonzero(kind == CROSS)
        if len(cross):
            at = begin[cross]
            out_low[cross] = mean_down(low[at], low[at + 1])
            out_high[cross] = mean_up(high[at], high[at + 1])
        excluded = kind == MIXED_CROSS
        for width in np.unique(count[excluded]).tolist():
            rows = np.flatnonzero(excluded & (count == width))
            at = begin[rows][:, None] + np.arange(width)
            lows = np.partition(low[at], 1, axis=1)
            highs = np.partition(high[at], -2, axis=1)
            out_low[rows] = mean_down(lows[:, 0], lows[:, 1])
            out_high[rows] = mean_up(highs[:, -1], highs[:, -2])
        return out_low, out_high
