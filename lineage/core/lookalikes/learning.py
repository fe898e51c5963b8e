"""Weights learned without any decision, from how often clues agree together (expectation-maximisation).

Two kinds of pairs, one plant and unrelated, each with its own shares of every level, clues independent within a
kind: Dempster, Laird & Rubin 1977, J. R. Stat. Soc. B 39:1-38; for record linkage Winkler 1988, Proc. Section on
Survey Research Methods, Am. Stat. Assoc.: 667-671.
"""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from .weights import NOT_KNOWN, Level, Weights, Witness

Pattern = tuple[str, ...]
Shares = dict[str, dict[str, float]]
_LEAST = 1e-9


@dataclass(frozen=True, slots=True)
class WeightEstimate:
    """``m[witness][level]`` and ``u[witness][level]``: shares; ``share``: of the pairs, how many are matches.

    ``settled``: the shares stopped moving before the last round allowed.
    """

    m: Shares
    u: Shares
    share: float
    rounds: int
    settled: bool

    def applied_to(self, weights: Weights) -> Weights:
        """Those weights with the estimated shares; a clue or level not estimated keeps what it had."""
        witnesses = tuple(self._apply(witness) for witness in weights.witnesses)
        return replace(weights, witnesses=witnesses)

    def _apply(self, witness: Witness) -> Witness:
        m, u = self.m.get(witness.key, {}), self.u.get(witness.key, {})
        levels = tuple(
            replace(level, m=min(1.0, max(m[level.name], _LEAST)), u=min(1.0, max(u[level.name], _LEAST)))
            if level.name in m and level.name in u and not level.silent
            else level
            for level in witness.levels
        )
        return replace(witness, levels=levels)


def estimate_weights(
    patterns: Mapping[Pattern, int] | Iterable[Pattern],
    *,
    witnesses: Sequence[str],
    start: Weights | None = None,
    random_patterns: Mapping[Pattern, int] | Iterable[Pattern] | None = None,
    share: float = 0.1,
    most_rounds: int = 2000,
    tolerance: float = 1e-9,
) -> WeightEstimate:
    """Estimate m, u and the share of matches from agreement patterns.

    patterns: one tuple of levels a pair, in the order of ``witnesses``, or how often each tuple was seen. Level
    "not known" is missing and tells nothing.
    start: where the search starts. Without it, or for levels it lacks, the first level in sorted order starts at
    m 0.1, u 0.9 against the others — so name binary levels "0" (disagree) and "1" (agree).
    random_patterns: patterns of pairs taken at random. Given, u is counted from them and held fast: among
    candidate pairs u is inflated by the search that brought them up.

    Raises ValueError for no patterns, or patterns of another length than ``witnesses``. Runs until no share moves
    more than ``tolerance``. Cost: rounds × different patterns × witnesses.

    >>> seen = {("1", "1"): 90, ("0", "0"): 880, ("1", "0"): 20, ("0", "1"): 10}
    >>> estimate_weights(seen, witnesses=["sound", "raiser"], most_rounds=50).m["sound"]["1"] > 0.7
    True
    """
    table = _Table(patterns, witnesses)
    m, u = table.starting_shares(start)
    fixed = _Table(random_patterns, witnesses).shares_seen() if random_patterns is not None else None
    if fixed is not None:
        u = table.shares_fixed(fixed, u)
    rounds, settled = 0, False
    while rounds < most_rounds and not settled:
        rounds += 1
        is_match = table.expect(m, u, share)
        new_m = table.maximise(is_match, m)
        new_u = u if fixed is not None else table.maximise(1 - is_match, u)
        new_share = float(np.average(is_match, weights=table.counts))
        moved = max(_moved(m, new_m), _moved(u, new_u), abs(new_share - share))
        m, u, share = new_m, new_u, new_share
        settled = moved <= tolerance
    return WeightEstimate(table.named(m), table.named(u), share, rounds, settled)


Arrays = list[NDArray[np.float64]]


def _moved(old: Arrays, new: Arrays) -> float:
    return max(float(np.max(np.abs(a - b), initial=0.0)) for a, b in zip(old, new, strict=True))


class _Table:
    """Patterns as arrays: one row a different pattern, one column a witness, −1 where not known."""

    def __init__(self, patterns: Mapping[Pattern, int] | Iterable[Pattern], witnesses: Sequence[str]) -> None:
        counted = dict(patterns) if isinstance(patterns, Mapping) else Counter(patterns)
        if not counted:
            raise ValueError("There are no patterns to learn from.")
        if not witnesses or any(len(pattern) != len(witnesses) for pattern in counted):
            raise ValueError(f"Every pattern has one level for each of the {len(witnesses)} witnesses.")
        self.witnesses = list(witnesses)
        self.levels = [
            sorted({pattern[i] for pattern in counted} - {NOT_KNOWN}) for i in range(len(self.witnesses))
        ]
        places = [{level: place for place, level in enumerate(levels)} for levels in self.levels]
        rows = [[places[i].get(level, -1) for i, level in enumerate(pattern)] for pattern in counted]
        self.rows = np.array(rows, dtype=np.intp)
        self.counts = np.array(list(counted.values()), dtype=np.float64)

    def starting_shares(self, start: Weights | None) -> tuple[Arrays, Arrays]:
        m, u = [], []
        for key, levels in zip(self.witnesses, self.levels, strict=True):
            known = {level.name: level for level in _levels_of(start, key)}
            if levels and all(level in known for level in levels):
                pairs = [(known[level].m, known[level].u) for level in levels]
            else:
                others = max(len(levels) - 1, 1)
                pairs = [(0.1, 0.9) if i == 0 else (0.9 / others, 0.1 / others) for i in range(len(levels))]
            m.append(_normalised(np.array([pair[0] for pair in pairs], dtype=np.float64)))
            u.append(_normalised(np.array([pair[1] for pair in pairs], dtype=np.float64)))
        return m, u

    def expect(self, m: Arrays, u: Arrays, share: float) -> NDArray[np.float64]:
        """Chance of each pattern to be a match."""
        log_odds = np.full(len(self.rows), np.log(max(share, _LEAST)) - np.log(max(1 - share, _LEAST)))
        for i, (m_i, u_i) in enumerate(zip(m, u, strict=True)):
            weights = np.append(np.log(np.maximum(m_i, _LEAST)) - np.log(np.maximum(u_i, _LEAST)), 0.0)
            log_odds += weights[self.rows[:, i]]
        return np.asarray(1 / (1 + np.exp(-np.clip(log_odds, -700, 700))), dtype=np.float64)

    def maximise(self, chance: NDArray[np.float64], before: Arrays) -> Arrays:
        mass = self.counts * chance
        shares = []
        for i, levels in enumerate(self.levels):
            known = self.rows[:, i] >= 0
            totals = np.bincount(self.rows[known, i], weights=mass[known], minlength=len(levels))
            shares.append(totals / totals.sum() if totals.sum() > 0 else before[i])
        return shares

    def shares_seen(self) -> Shares:
        return self.named(
            self.maximise(np.ones(len(self.rows)), [np.zeros(len(levels)) for levels in self.levels])
        )

    def shares_fixed(self, seen: Shares, fallback: Arrays) -> Arrays:
        """Shares seen elsewhere in this table's order; a level not seen there keeps its fallback."""
        found = []
        for key, levels, before in zip(self.witnesses, self.levels, fallback, strict=True):
            values = [seen[key].get(level) or float(before[i]) for i, level in enumerate(levels)]
            found.append(np.array(values, dtype=np.float64))
        return found

    def named(self, shares: Arrays) -> Shares:
        return {
            key: {level: float(share) for level, share in zip(levels, values, strict=True)}
            for key, levels, values in zip(self.witnesses, self.levels, shares, strict=True)
        }


def _levels_of(start: Weights | None, key: str) -> Iterable[Level]:
    if start is None:
        return ()
    return next((witness.levels for witness in start.witnesses if witness.key == key), ())


def _normalised(values: NDArray[np.float64]) -> NDArray[np.float64]:
    return values / values.sum() if values.size else values
