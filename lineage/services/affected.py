"""Which plants and cultivar names may come from elsewhere after some records changed."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from django.db import connection
from django.db.models import F, Q

from lineage.services.records import Scope
from lineage.services.standing import same_plants
from specimens.models import (
    ClaimParent,
    Division,
    Name,
    ParentageClaim,
    Specimen,
    SporeSource,
    SporeSowing,
)

# Kinds of records that say nothing of names or descent.
SILENT = frozenset({"photos", "keepings", "vocabulary"})
NOTHING = Scope(frozenset(), frozenset())


def affected_by(kind: str, ids: Collection[int]) -> Scope:
    """The plants and names whose place in the pedigree rests on these records; a fixed number of queries."""
    if kind in SILENT:
        return NOTHING
    if kind in ("names", "placements"):
        return _resting_on_names(_name_ids_below(ids))
    if kind == "claims":
        about = list(ParentageClaim.objects.filter(pk__in=ids).values_list("specimen", "name"))
        by_name = _resting_on_names(_name_ids_below(_present(name for _, name in about)))
        return _with_pieces({*_present(plant for plant, _ in about), *by_name.plants}, by_name.names)
    if kind == "sowings":
        return _with_pieces(_plants_where(sowing__in=ids), ())
    if kind == "crosses":
        return _with_pieces(_plants_where(sowing__cross__in=ids), ())
    return _resting_on_plants(ids)


def _resting_on_plants(ids: Collection[int]) -> Scope:
    same = same_plants()
    plants = {*ids, *(same[pk] for pk in ids if pk in same)}
    plants |= {later for later, earlier in same.items() if earlier in plants}
    # What names these plants as its parent: where two records are one plant, it is another node's child.
    rests = Q(specimen__in=plants)
    sown = SporeSource.objects.filter(rests).values("sowing")
    crossed = SporeSowing.objects.filter(
        Q(cross__first_specimen__in=plants) | Q(cross__second_specimen__in=plants)
    ).values("pk")
    claimed = list(ClaimParent.objects.filter(rests).values_list("claim__specimen", "claim__name"))
    plants |= _plants_where(sowing__in=sown) | _plants_where(sowing__in=crossed)
    plants |= set(_present(plant for plant, _ in claimed))
    founded = Name.objects.filter(original_plant__in=plants).values_list("pk", flat=True)
    return _with_pieces(plants, {*founded, *_present(name for _, name in claimed)})


def _resting_on_names(names: set[int]) -> Scope:
    """Plants known only by these names, and those that came of spores or claims that mention them."""
    if not names:
        return NOTHING
    mentions = Q(name__in=names)
    plants = _plants_where(identification__name__in=names)
    plants |= _plants_where(sowing__in=SporeSource.objects.filter(mentions).values("sowing"))
    crossed = Q(cross__first_name__in=names) | Q(cross__second_name__in=names)
    plants |= _plants_where(sowing__in=SporeSowing.objects.filter(crossed).values("pk"))
    claimed = list(ClaimParent.objects.filter(mentions).values_list("claim__specimen", "claim__name"))
    originals = Name.objects.filter(pk__in=names).values_list("original_plant", flat=True)
    plants |= {*_present(plant for plant, _ in claimed), *_present(originals)}
    return _with_pieces(plants, {*names, *_present(name for _, name in claimed)})


def _plants_where(**conditions: object) -> set[int]:
    return set(Specimen.objects.filter(**conditions).values_list("pk", flat=True))


def _present(ids: Iterable[int | None]) -> list[int]:
    return [pk for pk in ids if pk is not None]


def _with_pieces(plants: Iterable[int], names: Iterable[int]) -> Scope:
    """With all that hangs on these plants by division, up and down: they share claims, and pots their origin."""
    joined = _joined_by_division(set(plants))
    same = same_plants()
    other_records = {pk for pair in same.items() if joined & {*pair} for pk in pair} - joined
    if other_records:
        joined = _joined_by_division(joined | other_records)
    return Scope(frozenset(joined), frozenset(names))


def _joined_by_division(plants: set[int]) -> set[int]:
    if not plants:
        return set()
    quote = connection.ops.quote_name
    specimens, divisions = quote(Specimen._meta.db_table), quote(Division._meta.db_table)
    marks = ", ".join(["%s"] * len(plants))
    # Everybody above, then everybody below those: a piece has one parent, so that is all of them.
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE above(id) AS (SELECT id FROM {specimens} WHERE id IN ({marks}) UNION "  # noqa: S608
            f"SELECT d.parent_id FROM above JOIN {specimens} s ON s.id = above.id "
            f"JOIN {divisions} d ON d.id = s.division_id WHERE d.parent_id IS NOT NULL), "
            "below(id) AS (SELECT id FROM above UNION SELECT s.id FROM below "
            f"JOIN {divisions} d ON d.parent_id = below.id JOIN {specimens} s ON s.division_id = d.id) "
            "SELECT id FROM below",
            list(plants),
        )
        return {pk for (pk,) in cursor.fetchall()}


def _name_ids_below(names: Collection[int]) -> set[int]:
    """These names and their accepted ones, and all that stand under, are accepted as or are hybrids of any."""
    if not names:
        return set()
    accepted = Name.objects.filter(pk__in=names).exclude(accepted=F("pk")).values_list("accepted", flat=True)
    names = {*names, *_present(accepted)}
    table = connection.ops.quote_name(Name._meta.db_table)
    marks = ", ".join(["%s"] * len(names))
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE below(id) AS (SELECT id FROM {table} WHERE id IN ({marks}) UNION "  # noqa: S608
            f"SELECT next.id FROM below JOIN {table} next ON next.parent_id = below.id "
            "OR next.accepted_id = below.id OR next.first_parent_id = below.id "
            "OR next.second_parent_id = below.id) SELECT id FROM below",
            list(names),
        )
        return {pk for (pk,) in cursor.fetchall()}
