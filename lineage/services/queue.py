"""Which pairs wait for a decision: likely enough, and not decided, or brought back by a new clue."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from django.conf import settings

from lineage.core.decisions import Answer, Decision, Groups, still_standing
from lineage.core.lookalikes import NOT_KNOWN, Weights
from lineage.models import Kind, Ruling, Suspicion
from lineage.services.weights import bits_of, weights_taught_by

BATCH = 500


@dataclass(frozen=True, slots=True)
class Decided:
    """The decisions that stand: by pair, the groups they make, which groups are held apart, what they teach."""

    pairs: dict[tuple[int, int], Decision]
    groups: Groups
    apart: frozenset[frozenset[int]]
    weights: Weights

    @classmethod
    def read(cls) -> Decided:
        """From the database; two queries."""
        standing = still_standing(Ruling.objects.decisions())
        groups = Groups(standing)
        different = (d for d in standing if d.answer == Answer.DIFFERENT)
        apart = frozenset(frozenset(map(groups.accepted, (d.first, d.second))) for d in different)
        return cls({(d.first, d.second): d for d in standing}, groups, apart, weights_taught_by(standing))

    def between(self, first: int, second: int) -> frozenset[int]:
        """The two groups of a pair, by their accepted names; a single one where they are joined."""
        return frozenset((self.groups.accepted(first), self.groups.accepted(second)))

    def not_joined(self, pairs: Iterable[tuple[int, int]]) -> set[tuple[int, int]]:
        """Those of these pairs that no decisions join."""
        return {pair for pair in pairs if not self.groups.are_one(*pair)}


def settle_queue(decided: Decided, *, names: Collection[int] | None = None) -> None:
    """Set for all pairs, or for those of these names' groups, whether they wait; four queries at most."""
    asked = Suspicion.objects.filter(kind=Kind.NAMES)
    if names is not None:
        members = {member for name in names for member in decided.groups.members(name)}
        asked = Suspicion.objects.of_names(members)
    rows = list(asked.in_order())
    because = new_clues(rows, decided)
    waiting = _waiting(rows, decided, because)
    changed = []
    for row in rows:
        now = (row.pk in waiting, because.get(row.pk, []) if row.pk in waiting else [])
        if (row.in_queue, row.returned_because) != now:
            row.in_queue, row.returned_because = now
            changed.append(row)
    if changed:
        Suspicion.objects.bulk_update(changed, ["in_queue", "returned_because"], batch_size=BATCH)


def _waiting(rows: Iterable[Suspicion], decided: Decided, because: dict[int, list[str]]) -> set[int]:
    """Ids of the pairs that wait, of rows in order. Of several pairs that ask the same, the likeliest asks."""
    asked: dict[frozenset[int], int] = {}
    for row in rows:
        groups = decided.between(*row.pair)
        if row.probability < settings.SUSPICION_THRESHOLD or len(groups) == 1:
            continue
        if row.pair in decided.pairs:
            if because.get(row.pk):
                asked.setdefault(groups, row.pk)
        elif groups not in decided.apart:
            asked.setdefault(groups, row.pk)
    return set(asked.values())


def new_clues(rows: Iterable[Suspicion], decided: Decided) -> dict[int, list[str]]:
    """By id of a decided pair, the sentences of clues that speak since, against what was decided.

    Against “different” speaks what makes one plant likelier; “evidence wanted” and “not known” wait for
    any clue. One query, none where nothing was decided.
    """
    decisions = {row.pk: decided.pairs[row.pair] for row in rows if row.pair in decided.pairs}
    open_ones = {pk: d for pk, d in decisions.items() if d.answer != Answer.SAME}
    if not open_ones:
        return {}
    seen = dict(Ruling.objects.filter(pk__in=[d.id for d in open_ones.values()]).values_list("pk", "seen"))
    weights = decided.weights
    found: dict[int, list[str]] = defaultdict(list)
    for row in rows:
        decision = open_ones.get(row.pk)
        if decision is None:
            continue
        for clue in row.summands:
            change = clue["bits"] - _bits_then(clue["witness"], seen[decision.id], weights)
            speaks = change > 0 and clue["bits"] > 0 if decision.answer == Answer.DIFFERENT else change != 0
            if speaks and clue["level"] != seen[decision.id].get(clue["witness"]) and clue["bits"]:
                found[row.pk].append(clue["sentence"])
    return dict(found)


def _bits_then(witness: str, seen: Mapping[str, str], weights: Weights) -> float:
    """What a clue weighed when the decision was made, by the weights of today."""
    return bits_of(witness, seen.get(witness, NOT_KNOWN), weights) or 0.0
