"""The facts of parentage classes, one class at a time, parents first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

from lineage.core.bounds import combine, half_plus_half, plus_one
from lineage.core.nodes import Interval, Species
from lineage.core.parentage import CROSS, MIXED, MIXED_CROSS, SELF

#: Generations of ancestors that count in the index of completeness.
DEPTH = 5
INTRA = 1
INTER = 2
FAR = DEPTH + 1


class ClassFacts(NamedTuple):
    """What all plants of one parentage class share.

    ``recorded[j]`` is the share of the ``2**j`` ancestors j generations up that are recorded, itself at 0.
    ``unsettled`` is the distance to the nearest unsettled plant among itself and its ancestors, at most 6.
    """

    level: int
    gen_min: int
    gen_max: int
    eq: Interval
    recorded: tuple[float, ...]
    unsettled: int
    completeness: float | None
    inbreeding: Interval
    composition: dict[Species | None, Interval]


#: A parent not known: a founder of unknown species that adds nothing to equivalent generations.
NOBODY_FACTS = ClassFacts(0, 0, 0, (-1.0, -1.0), (0.0,) * DEPTH, FAR, 0.0, (0.0, 0.0), {None: (1.0, 1.0)})


def founder_facts(shares: dict[Species | None, float]) -> ClassFacts:
    """Return the facts of a founder; what is not known of its species may be any of them."""
    unknown = shares.get(None, 0.0)
    composition = {s: (x, x if s is None else x + unknown) for s, x in shares.items()}
    recorded = (1.0,) + (0.0,) * (DEPTH - 1)
    return ClassFacts(0, 0, 0, (0.0, 0.0), recorded, FAR, 0.0, (0.0, 0.0), composition)


def spore_facts(
    *,
    kind: int,
    mode: int,
    parents: Sequence[int],
    facts_of: Callable[[int], ClassFacts],
    kinship: Callable[[int, int], Interval],
) -> ClassFacts:
    """Return the facts of a class raised from spores, from those of its parents.

    Parameters
    ----------
    parents
        Ortet rows, -1 for a plant not known.
    facts_of
        From an ortet row (or -1) to its facts.
    kinship
        From two ortet rows (or -1) to their bounds of kinship.
    """
    above = [facts_of(parent) for parent in parents]
    recorded = _recorded(kind, above)
    unsettled = 0 if kind >= MIXED else min(FAR, 1 + min(facts.unsettled for facts in above))
    return ClassFacts(
        level=1 + max(facts.level for facts in above),
        gen_min=1 + min(facts.gen_min for facts in above),
        gen_max=1 + max(facts.gen_max for facts in above),
        eq=combine(kind, [plus_one(facts.eq) for facts in above]),
        recorded=recorded,
        unsettled=unsettled,
        completeness=_completeness(above) if unsettled > DEPTH else None,
        inbreeding=_inbreeding(kind, mode, parents, [facts.inbreeding for facts in above], kinship),
        composition=_composition(kind, [facts.composition for facts in above]),
    )


def _recorded(kind: int, above: Sequence[ClassFacts]) -> tuple[float, ...]:
    mother, father = above[0].recorded, above[-1 if kind == CROSS else 0].recorded
    return (1.0, *((a + b) / 2 for a, b in zip(mother[:-1], father[:-1], strict=True)))


def _completeness(above: Sequence[ClassFacts]) -> float:
    mother, father = sum(above[0].recorded), sum(above[-1].recorded)
    return 2 * mother * father / (DEPTH * (mother + father)) if mother and father else 0.0


def _inbreeding(
    kind: int,
    mode: int,
    parents: Sequence[int],
    above: Sequence[Interval],
    kinship: Callable[[int, int], Interval],
) -> Interval:
    if kind == SELF and mode == INTRA:
        return 1.0, 1.0
    if kind == SELF:
        low, high = half_plus_half(above[0])
        return low, high if mode == INTER else 1.0
    pairs = [kinship(a, b) for i, a in enumerate(parents) for b in parents[:i]]
    low = min((low for low, _ in pairs), default=1.0)
    if kind in (CROSS, MIXED_CROSS):
        return low, max(high for _, high in pairs)
    return min(low, *(half_plus_half(part)[0] for part in above)), 1.0


def _composition(
    kind: int, above: Sequence[dict[Species | None, Interval]]
) -> dict[Species | None, Interval]:
    """Combine species by species; a species a parent does not name may be all of what is not known there."""
    unnamed = [(0.0, parent[None][1] if None in parent else 0.0) for parent in above]
    both = list(zip(above, unnamed, strict=True))
    species = dict.fromkeys(s for parent in above for s in parent)
    return {
        s: combine(kind, [parent.get(s, (0.0, 0.0) if s is None else rest) for parent, rest in both])
        for s in species
    }
