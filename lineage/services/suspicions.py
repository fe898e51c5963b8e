"""Pairs of names that are perhaps one plant: weighed anew whenever a record changes that a clue rests on."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from contextvars import ContextVar
from dataclasses import dataclass, field
from itertools import chain

from django.db.models import Q
from django.utils import timezone

from lineage.core.lookalikes import Likeness, Weights, compare_names
from lineage.models import Kind, Suspicion
from lineage.services.candidates import Pair, all_pairs, is_candidate, pairs_with
from lineage.services.clue_records import NameClues, read_clues
from lineage.services.kept_names import kept_cultivars
from lineage.services.queue import Decided, settle_queue
from lineage.services.weights import weights_version
from lineage.services.witnesses import Weighed, add_up, weigh_pair
from specimens.models import Identification, Name, ParentageClaim

# A pair less likely than this is not worth a row, unless somebody decided on it.
LEAST = 0.05
# From so many names on, all are weighed anew.
MANY = 400
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
            genus_of = names[pk].genus
            own = genus_of.epithet if genus_of else None
            told.append((names[pk], compare_names(text, names[pk].written, genus_a=genus, genus_b=own)))
    return [(name, likeness) for name, likeness in told if likeness.level != "far"]


@dataclass(slots=True)
class Changed:
    """What changed together since pairs were last weighed: records by kind, and what their lineage moved."""

    plants: set[int] = field(default_factory=set)
    names: set[int] = field(default_factory=set)
    claims: set[int] = field(default_factory=set)


# Of one thread or task alone, from the refresher hearing of a change to the closer at its end.
_changed: ContextVar[Changed | None] = ContextVar("changed", default=None)


def note_change(kind: str, ids: Collection[int], *, plants: Collection[int], names: Collection[int]) -> None:
    """Remember that clues may have changed: with these records, and with these nodes of lineage. No query."""
    changed = _changed.get() or Changed()
    changed.plants.update(plants, ids if kind in OF_PLANTS else ())
    changed.names.update(names, ids if kind == "names" else ())
    changed.claims.update(ids if kind == "claims" else ())
    _changed.set(changed)


def weigh_what_changed() -> None:
    """Weigh anew what rests on the changes noted, in their transaction; a fixed number of queries."""
    changed = _changed.get()
    _changed.set(None)
    if changed is None or not (changed.plants or changed.names or changed.claims):
        return
    concerned = _names_concerned(changed)
    if len(concerned) > MANY:
        rebuild_suspicions()
    elif concerned:
        reweigh(concerned)


def _names_concerned(changed: Changed) -> set[int]:
    """Cultivar names that changed, that a changed plant bears or bore, or that a changed claim is about."""
    bore = Identification.objects.filter(specimen__in=changed.plants)
    claims = ParentageClaim.objects.filter(pk__in=changed.claims)
    about = Identification.objects.filter(specimen__in=claims.values("specimen"))
    wanted = Q(pk__in=changed.names)
    wanted |= Q(pk__in=bore.values("name")) if changed.plants else Q()
    if changed.claims:
        wanted |= Q(pk__in=claims.values("name")) | Q(pk__in=about.values("name"))
    return set(Name.objects.filter(wanted, rank="cultivar").values_list("pk", flat=True))


def reweigh(names: Collection[int]) -> None:
    """Weigh every pair that one of these names is in; some thirty queries, whatever the number."""
    decided = Decided.read()
    stored = _stored(Suspicion.objects.of_names(names), decided)
    pairs = decided.not_joined(pairs_with(names)) | stored.keys()
    asked = {*names, *chain.from_iterable(pairs)}
    clues = read_clues(Name.objects.cultivars().filter(pk__in=asked))
    _write(_weigh(pairs, clues, decided.weights), stored, decided)
    settle_queue(decided, names=asked)


def rebuild_suspicions() -> tuple[int, int]:
    """Weigh all names anew: how many pairs are kept, and how many of them wait for a decision."""
    decided = Decided.read()
    stored = _stored(Suspicion.objects.filter(kind=Kind.NAMES), decided)
    clues = read_clues(Name.objects.cultivars())
    _write(
        _weigh(decided.not_joined(all_pairs(clues)) | stored.keys(), clues, decided.weights), stored, decided
    )
    settle_queue(decided)
    kept = Suspicion.objects.filter(kind=Kind.NAMES)
    return kept.count(), kept.filter(in_queue=True).count()


def add_up_again() -> None:
    """Add up the clues of all stored pairs by the weights of today, after a decision moved them.

    What the clues say is not looked at again. Some five queries.
    """
    decided = Decided.read()
    stored = _stored(Suspicion.objects.filter(kind=Kind.NAMES), decided)
    _write([add_up(row, decided.weights) for row in stored.values()], stored, decided)
    settle_queue(decided)


def _weigh(pairs: Collection[Pair], clues: Mapping[int, NameClues], weights: Weights) -> list[Weighed]:
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
    version = weights_version(decided.weights)
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
