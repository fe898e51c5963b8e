"""Which pairs of cultivar names are worth weighing at all, found without comparing all with all."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping
from itertools import combinations

from django.db.models import Q

from lineage.core.lookalikes import candidate_pairs
from lineage.core.lookalikes.likeness import NEAR
from lineage.models import LineageNode
from lineage.services.clue_records import WRITTEN, NameClues, genus_of, surely_named, texts_of
from lineage.services.kept_names import kept_cultivars
from lineage.services.witnesses import Weighed
from specimens.models import ClaimParent, Name, ParentageClaim, Photo, Specimen

Pair = tuple[int, int]
# So many names are looked at for each that changed.
MOST_LIKE = 10
# A clue of these levels brings a pair in, however its names are written.
BRING_IN = (("clone", "one clone"), ("parents", "same two"), ("photo", "one picture"))


def is_candidate(found: Weighed) -> bool:
    """Whether a pair is kept: alike as written, or brought in by another clue."""
    levels = found.levels
    return found.score >= NEAR or any(levels.get(witness) == level for witness, level in BRING_IN)


def all_pairs(clues: Mapping[int, NameClues]) -> set[Pair]:
    """Candidates among all names; asks the database nothing."""
    written = (
        ((pk, way), text, each.genus or None)
        for pk, each in clues.items()
        for way, text in enumerate(each.texts)
    )
    alike = candidate_pairs(written, cutoff=NEAR)
    found = {(first[0], second[0]) for first, second, _ in alike if first[0] != second[0]}
    for told in (_lines, _pictures, _clones_of_parents):
        groups: dict[object, list[int]] = defaultdict(list)
        for pk in sorted(clues):
            for key in told(clues[pk]):
                groups[key].append(pk)
        found.update(pair for group in groups.values() for pair in combinations(group, 2))
    return found


def pairs_with(names: Collection[int]) -> set[Pair]:
    """Candidates of which at least one is among these names; six queries, whatever the number."""
    found = _spelled_alike(names)
    for others in (_with_pieces_of(names), _pictured_with(names), _raised_from_the_same(names)):
        found.update(
            (min(name, other), max(name, other)) for name in names for other in others if name != other
        )
    return found


def _lines(clues: NameClues) -> Iterable[int]:
    return clues.lines


def _pictures(clues: NameClues) -> Iterable[str]:
    return clues.pictures


def _clones_of_parents(clues: NameClues) -> Iterable[int]:
    return {parent.plant for parent in clues.parents or () if parent.plant is not None}


def _spelled_alike(names: Collection[int]) -> set[Pair]:
    rows = Name.objects.cultivars().filter(pk__in=names).values_list("pk", *WRITTEN)
    asked = [(pk, text, genus_of(written[-1])) for pk, *written in rows for text in texts_of(*written)]
    answers = kept_cultivars.like_each([(text, genus) for _, text, genus in asked], limit=MOST_LIKE + 1)
    return {
        (min(pk, other), max(pk, other))
        for (pk, _, _), alike in zip(asked, answers, strict=True)
        for other, score in alike
        if other != pk and score >= NEAR
    }


def _with_pieces_of(names: Collection[int]) -> set[int]:
    """Names borne by plants of a clone line that has a plant under one of these."""
    lines = LineageNode.objects.filter(**surely_named(names, at="specimen__")).values("clone_line")
    return set(
        Specimen.objects.standing()
        .filter(lineage_node__clone_line__in=lines, identification__name__rank="cultivar")
        .values_list("identification__name", flat=True)
    )


def _pictured_with(names: Collection[int]) -> set[int]:
    pictures = Photo.objects.filter(is_drawing=False, **surely_named(names, at="specimen__"))
    return set(
        Photo.objects.filter(
            is_drawing=False,
            difference_hash__in=pictures.exclude(difference_hash="").values("difference_hash"),
            specimen__identification__name__rank="cultivar",
        ).values_list("specimen__identification__name", flat=True)
    )


def _raised_from_the_same(names: Collection[int]) -> set[int]:
    """Names whose claims mention a plant, or a clone, that a claim about one of these mentions."""
    claims = ParentageClaim.objects.filter(name__in=names, standing=ParentageClaim.Standing.CURRENT)
    mentioned = list(
        ClaimParent.objects.filter(claim__in=claims).values_list(
            "specimen__lineage_node__genet", "name__accepted__lineage_node__genet"
        )
    )
    genets = {genet for pair in mentioned for genet in pair if genet is not None}
    of_one = Q(specimen__lineage_node__genet__in=genets) | Q(name__accepted__lineage_node__genet__in=genets)
    found = ClaimParent.objects.filter(of_one, claim__standing=ParentageClaim.Standing.CURRENT)
    return set(found.exclude(claim__name=None).values_list("claim__name", flat=True))
