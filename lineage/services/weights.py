"""What each clue weighs today: the shipped weights, moved by the decisions that stand.

Shares among unrelated pairs stay the shipped ones: pairs that were singled out are no fair sample of those
(Fellegi & Sunter 1969, J. Am. Stat. Assoc. 64:1183-1210, take them from all pairs).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from hashlib import blake2b

from lineage.core.decisions import Answer, Decision
from lineage.core.lookalikes import UnknownLevel, Weights
from lineage.models import Ruling


def weights_taught_by(standing: Iterable[Decision]) -> Weights:
    """The shipped weights, with the clues of pairs found to be one plant counted in; one query, or none.

    Pairs found to be two teach nothing of unrelated pairs: they were looked at because they are alike, and
    one of them would make likeness seem common.
    """
    teaching = [decision.id for decision in standing if decision.answer == Answer.SAME]
    if not teaching:
        return Weights.default()
    rows = Ruling.objects.filter(pk__in=teaching).order_by("pk").values_list("seen", flat=True)
    weights = Weights.default()
    return weights.learn((known_clues(seen, weights), True) for seen in rows)


def known_clues(seen: Mapping[str, str], weights: Weights) -> dict[str, str]:
    """Those clues that the table still has: levels get other names as the software grows."""
    return {witness: level for witness, level in seen.items() if bits_of(witness, level, weights) is not None}


def bits_of(witness: str, level: str, weights: Weights) -> float | None:
    """What a level weighs, rounded as it is stored; None for one the table does not have."""
    try:
        return round(weights.witness(witness).level(level).bits, 3)
    except UnknownLevel:
        return None


def weights_version(weights: Weights) -> str:
    """Tells one table of weights from another."""
    return blake2b(repr(weights).encode(), digest_size=8).hexdigest()
