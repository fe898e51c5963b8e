"""Kinship of two genets, one pair at a time, remembering the pairs met."""

from __future__ import annotations

from collections.abc import Callable

from lineage.core.bounds import combine, half_plus_half
from lineage.core.nodes import Interval
from lineage.core.parentage import MIXED

Pair = tuple[int, int]
#: A kind of parentage and its parents, as ortet rows, -1 for a plant not known.
Parentage = tuple[int, list[int]]


class TooManyPairs(Exception):
    """More pairs of ancestors than the cap allows."""


class PairByPair:
    """Bounds of kinship between ortets, by expanding the younger of each pair into its parents.

    Parameters
    ----------
    parentage
        From an ortet row to its `Parentage`.
    level
        From an ortet row to the longest path down from a founder.
    inbreeding
        From an ortet row to its bounds of F; asked only of ancestors of the pair.
    cap
        Pairs remembered before `TooManyPairs` is raised.
    """

    def __init__(
        self,
        parentage: Callable[[int], Parentage],
        level: Callable[[int], int],
        inbreeding: Callable[[int], Interval],
        cap: int,
    ) -> None:
        self._cap = cap
        self._parentage = parentage
        self._level = level
        self._inbreeding = inbreeding
        self._known: dict[Pair, Interval] = {}

    def between(self, a: int, b: int) -> Interval:
        """Return the bounds of kinship; of an ortet with itself, of two plants of that genet.

        Costs the pairs of ancestors that can be reached. Any depth.
        """
        found = self._at_hand(a, b)
        waiting = [] if found is not None else [(a, b)]
        while waiting:
            x, y = waiting[-1]
            ways = [] if self._at_hand(x, y) is not None else self._ways(x, y)
            missing = [
                (p, other) for parents, other in ways for p in parents[1] if self._at_hand(p, other) is None
            ]
            waiting.extend(missing)
            if missing:
                continue
            waiting.pop()
            if ways:
                self._known[_ordered(x, y)] = self._meet(ways)
                if len(self._known) > self._cap:
                    raise TooManyPairs
        return self._at_hand(a, b) or (0.0, 1.0)

    def _at_hand(self, a: int, b: int) -> Interval | None:
        if a < 0 or b < 0:
            return 0.0, 0.0
        if a == b:
            return half_plus_half(self._inbreeding(a))
        found = self._known.get(_ordered(a, b))
        if found is None and not self._level(a) and not self._level(b):
            return 0.0, 0.0
        return found

    def _ways(self, a: int, b: int) -> list[tuple[Parentage, int]]:
        """Return which of the two to expand against which; both ways where both are unsettled."""
        older = self._level(a) - self._level(b)
        of_a, of_b = self._parentage(a), self._parentage(b)
        if older > 0:
            return [(of_a, b)]
        if older < 0:
            return [(of_b, a)]
        if of_a[0] >= MIXED and of_b[0] >= MIXED:
            return [(of_a, b), (of_b, a)]
        return [(of_a, b)] if of_a[0] >= MIXED else [(of_b, a)]

    def _meet(self, ways: list[tuple[Parentage, int]]) -> Interval:
        found = [
            combine(kind, [self._at_hand(p, other) or (0.0, 1.0) for p in parents])
            for (kind, parents), other in ways
        ]
        return max(low for low, _ in found), min(high for _, high in found)


def _ordered(a: int, b: int) -> Pair:
    return (a, b) if a < b else (b, a)
