"""Pairs of names that are perhaps one plant: weighed anew whenever a record changes that a clue rests on."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from hashlib import blake2b
from itertools import chain

from django.db.models import Q
from django.utils import timezone

from lineage.core.lookalikes import Likeness, Weights, compare_names
from lineage.models import Kind, Suspicion
from lineage.services.candidates import Pair, all_pairs, is_candidate, pairs_with
from lineage.services.clue_records import NameClues, read_clues
from lineage.services.kept_names import kept_cultivars
from lineage.services.queue import Decided, settle_queue
from lineage.services.witnesses import Weighed, weigh_pair
from specimens.models import Identification, Name, ParentageClaim

# A pair less likely than this is not worth a row, unless somebody decided on it.
LEAST = 0.05
# From so many names on, all are weighed anew.
MANY = 60
# Kinds of records that say something of the names that a plant bears or bore.
OF_PLANTS = frozenset({"specimens", "keepings", "photos"})
BATCH = 500
COLUMNS = ("score", "bits", "probability", "summands", "weights_version", "weighed_at")


def looks_like(text: str, *, genus: str | None = None, limit: int = 3) -> list[tuple[Name, Likeness]]:
    """Cultivar names on record that a name as typed may mean, the likeliest first; three queries at most.

    `genus` is that of the plant, where it is known and the text does not say it. A name on record exactly
    as typed comes first with a score of 1. Nothing that reads as another name comes back.
    """
    found = kept_cultivars.like(text, genus, limit=limit)
    names = Name.objects.standing().select_related("accepted", "genus").in_bulk([pk for pk, _ in found])
    told = []
    for pk, _ in found:
        if pk in names:
            own = names[pk].genus.epithet if names[pk].genus else None
            told.append((names[pk], compare_names(text, names[pk].written, genus_a=genus, genus_b=own)))
    return [(name, likeness) for name, likeness in told if likeness.level != "far"]


def current_weights() -> Weights:
    return Weights.default()


def weights_version(weights: Weights) -> str:
    """Tells one table of weights from another."""
    return blake2b(repr(weights).encode(), digest_size=8).hexdigest()


def refresh_suspicions(
    kind: str, ids: Collection[int], *, plants: Collection[int], names: Collection[int]
) -> None:
    """Weigh anew what rests on these records, and on these plants and names whose lineage changed with them.

    A fixed number of queries, none of them where the kind says nothing of names; in the caller's transaction.
    """
    if len(ids) + len(plants) + len(names) > MANY * 10:
        rebuild_suspicions()
        return
    concerned = _names_concerned(kind, ids, plants, names)
    if len(concerned) > MANY:
        rebuild_suspicions()
    elif concerned:
        reweigh(concerned)


def _names_concerned(
    kind: str, ids: Collection[int], plants: Collection[int], names: Collection[int]
) -> set[int]:
    of_plants = {*plants, *(ids if kind in OF_PLANTS else ())}
    wanted = Q(pk__in={*names, *(ids if kind == "names" else ())})
    if kind == "claims":
        claims = ParentageClaim.objects.filter(pk__in=ids)
        wanted |= Q(pk__in=claims.values("name"))
        wanted |= Q(identifications__specimen__in=claims.values("specimen"))
    if of_plants:
        wanted |= Q(pk__in=Identification.objects.filter(specimen__in=of_plants).values("name"))
    elif not (names or kind in ("names", "claims")):
        return set()
    return set(Name.objects.filter(wanted, rank="cultivar").values_list("pk", flat=True))


def reweigh(names: Collection[int]) -> None:
    """Weigh every pair that one of these names is in; some thirty queries, whatever the number."""
    decided = Decided.read()
    stored = _stored(Suspicion.objects.of_names(names), decided)
    pairs = decided.not_joined(pairs_with(names)) | stored.keys()
    asked = {*names, *chain.from_iterable(pairs)}
    clues = read_clues(Name.objects.cultivars().filter(pk__in=asked))
    _write(_weigh(pairs, clues), stored, decided)
    settle_queue(decided, names=asked)


def rebuild_suspicions() -> tuple[int, int]:
    """Weigh all names anew: how many pairs are kept, and how many of them wait for a decision."""
    decided = Decided.read()
    stored = _stored(Suspicion.objects.filter(kind=Kind.NAMES), decided)
    clues = read_clues(Name.objects.cultivars())
    _write(_weigh(decided.not_joined(all_pairs(clues)) | stored.keys(), clues), stored, decided)
    settle_queue(decided)
    kept = Suspicion.objects.filter(kind=Kind.NAMES)
    return kept.count(), kept.filter(in_queue=True).count()


def _weigh(pairs: Collection[Pair], clues: Mapping[int, NameClues]) -> list[Weighed]:
    weights = current_weights()
    # A name that was voided has no clues any more, and no pairs.
    there = [(a, b) for a, b in sorted(pairs) if a in clues and b in clues]
    return [weigh_pair(clues[first], clues[second], weights) for first, second in there]


def _stored(rows: Iterable[Suspicion], decided: Decided) -> dict[Pair, Suspicion]:
    """Stored pairs, but those joined by a decision: their clues stay as they were when it was made.

    Weighed now, the decision would speak for itself: the plants of both names hang on one.
    """
    return {row.pair: row for row in rows if len(decided.between(*row.pair)) == 2}


def _write(weighed: list[Weighed], stored: Mapping[Pair, Suspicion], decided: Decided) -> None:
    """Bring the stored pairs to what was weighed; pairs that are nothing now, and undecided, go."""
    version = weights_version(current_weights())
    kept = {
        (each.first, each.second): each
        for each in weighed
        if (each.first, each.second) in decided.pairs or (each.probability >= LEAST and is_candidate(each))
    }
    gone = [row.pk for pair, row in stored.items() if pair not in kept]
    if gone:
        Suspicion.objects.filter(pk__in=gone).delete()
    fresh = [
        Suspicion(first_name_id=a, second_name_id=b, **_values(each, version))
        for (a, b), each in kept.items()
        if (a, b) not in stored
    ]
    if fresh:
        Suspicion.objects.bulk_create(fresh, batch_size=BATCH)
    changed = [row for pair, row in stored.items() if pair in kept and _fill(row, kept[pair], version)]
    if changed:
        Suspicion.objects.bulk_update(changed, COLUMNS, batch_size=BATCH)


def _values(found: Weighed, version: str) -> dict[str, object]:
    return {
        "score": found.score,
        "bits": found.bits,
        "probability": found.probability,
        "summands": found.summands,
        "weights_version": version,
        "weighed_at": timezone.now(),
    }


def _fill(row: Suspicion, found: Weighed, version: str) -> bool:
    """Put what was weighed into a stored row; whether anything is different now."""
    same = row.summands == found.summands and row.bits == found.bits and row.weights_version == version
    for column, value in _values(found, version).items():
        setattr(row, column, value)
    return not same
