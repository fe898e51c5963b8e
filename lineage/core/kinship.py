"""Kinship of two genets, one pair at a time, remembering the pairs met."""

from __future__ import annotations

from collections.abc import Callable

from lineage.core.bounds import combine, half_plus_half
from lineage.core.nodes import Interval
from lineage.core.parentage import MIXED

Pair = tuple[int, int]
#: Level, kind of parentage and parents of an ortet, these as ortet rows, -1 for a plant not known.
Plant = tuple[int, int, list[int]]
#: A plant to expand, and the one its parents are paired with.
Way = tuple[Plant, int]

_UNRELATED = (0.0, 0.0)


class TooManyPairs(Exception):
    """More pairs of ancestors than the cap allows."""


class PairByPair:
    """Bounds of kinship between ortets, by expanding the younger of each pair into its parents.

    Parameters
    ----------
    plant
        From an ortet row to its `Plant`. The level is the longest path down from a founder.
    inbreeding
        From an ortet row to its bounds of F; asked only of ancestors of the pair.
    cap
        Pairs remembered before `TooManyPairs` is raised.
    """

    def __init__(
        self, plant: Callable[[int], Plant], inbreeding: Callable[[int], Interval], cap: int
    ) -> None:
        self._look_up = plant
        self._inbreeding = inbreeding
        self._cap = cap
        self._plants: dict[int, Plant] = {}
        self._known: dict[Pair, Interval] = {}

    def between(self, a: int, b: int) -> Interval:
        """Return the bounds of kinship; of an ortet with itself, of two plants of that genet.

        Costs the pairs of ancestors that can be reached. Any depth.
        """
        found = self._at_hand(a, b)
        waiting = [] if found is not None else [(a, b, self._ways(a, b))]
        while waiting:
            x, y, ways = waiting[-1]
            missing = [
                (p, other) for plant, other in ways for p in plant[2] if self._at_hand(p, other) is None
            ]
            if missing:
                waiting.extend((p, other, self._ways(p, other)) for p, other in missing)
                continue
            waiting.pop()
            self._known[(x, y) if x < y else (y, x)] = self._meet(ways)
            if len(self._known) > self._cap:
                raise TooManyPairs
        return self._at_hand(a, b) or _UNRELATED

    def _at_hand(self, a: int, b: int) -> Interval | None:
        if a < 0 or b < 0:
            return _UNRELATED
        pair = (a, b) if a < b else (b, a)
        found = self._known.get(pair)
        if found is not None:
            return found
        if a == b:
            found = half_plus_half(self._inbreeding(a))
        elif self._plant(a)[0] or self._plant(b)[0]:
            return None
        else:
            found = _UNRELATED
        self._known[pair] = found
        return found

    def _plant(self, row: int) -> Plant:
        plant = self._plants.get(row)
        if plant is None:
            plant = self._plants[row] = self._look_up(row)
        return plant

    def _ways(self, a: int, b: int) -> list[Way]:
        """Return which of the two to expand against which; both ways where both are unsettled."""
        of_a, of_b = self._plant(a), self._plant(b)
        if of_a[0] != of_b[0]:
            return [(of_a, b)] if of_a[0] > of_b[0] else [(of_b, a)]
        if of_a[1] >= MIXED and of_b[1] >= MIXED:
            return [(of_a, b), (of_b, a)]
        return [(of_a, b)] if of_a[1] >= MIXED else [(of_b, a)]

    def _meet(self, ways: list[Way]) -> Interval:
        found = [
            combine(kind, [self._at_hand(p, other) or _UNRELATED for p in parents])
            for (_, kind, parents), other in ways
        ]
        if len(found) == 1:
            return found[0]
        return max(low for low, _ in found), min(high for _, high in found)
