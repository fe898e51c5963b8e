"""The records that descent is read from, as plain rows: loaded whole, or around a few plants and names."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field

from django.db import connection
from django.db.models import Q, QuerySet

from lineage.services.standing import same_plants
from specimens.models import ClaimParent, Holds, Name, ParentageClaim, Specimen, SporeSource, SporeSowing


@dataclass(frozen=True, slots=True)
class Mentioned:
    """A parent as a record names it: a plant, a name, or neither (not known). `key` is the mention's own."""

    key: str
    plant: int | None = None
    name: int | None = None


@dataclass(frozen=True, slots=True)
class PlantRecord:
    """One specimen: what it is a piece of, whose sowing it came of, what it is thought to be."""

    id: int
    is_pot: bool
    from_spores: bool
    piece_of: int | None
    sport: bool
    sowing: int | None
    name: int | None
    qualifier: str


@dataclass(frozen=True, slots=True)
class SowingRecord:
    determined: str
    sources: tuple[Mentioned, ...]


@dataclass(frozen=True, slots=True)
class ClaimRecord:
    id: int
    says: str
    selfing: str
    selfs_excluded: bool
    parents: tuple[Mentioned, ...]


@dataclass(frozen=True, slots=True)
class NameRecord:
    id: int
    rank: str
    parent: int | None
    accepted: int | None
    first_parent: int | None
    second_parent: int | None
    reproduction: str
    original_plant: int | None


@dataclass(frozen=True, slots=True)
class Records:
    """Everything descent is derived from. References to a record ruled to be of an earlier plant are the earlier's."""

    plants: dict[int, PlantRecord]
    sowings: dict[int, SowingRecord]
    plant_claims: dict[int, ClaimRecord]
    name_claims: dict[int, ClaimRecord]
    names: dict[int, NameRecord]
    same: dict[int, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Scope:
    """The plants and names whose definitions are wanted; plants with all that hang on them by division."""

    plants: frozenset[int]
    names: frozenset[int]


def load_records(scope: Scope | None = None) -> Records:
    """All records, or those the definitions of a scope rest on; a dozen queries at most, whatever the number."""
    same = same_plants()
    plants = _plants(scope, same)
    sowings = _sowings(scope, {p.sowing for p in plants.values() if p.sowing}, same)
    named = {p.name for p in plants.values()} | set(scope.names if scope else ())
    named |= {m.name for sowing in sowings.values() for m in sowing.sources}
    records = {*plants, *(later for later, earlier in same.items() if earlier in plants)}
    plant_claims = _claims(scope, Q(specimen__in=records), "specimen_id", same)
    named |= {m.name for claim in plant_claims.values() for m in claim.parents}
    # What is recorded of a synonym holds for the plant; its claim may name further names.
    near = _with_synonyms(_name_ids_above(named)) if scope else set()
    named |= near
    name_claims = _claims(scope, Q(name__in=near), "name_id", same)
    named |= {m.name for claim in name_claims.values() for m in claim.parents}
    names = _names(_name_ids_above(named) if scope else None, same)
    return Records(plants, sowings, plant_claims, name_claims, names, same)


def _plants(scope: Scope | None, same: dict[int, int]) -> dict[int, PlantRecord]:
    rows: QuerySet[Specimen] = Specimen.objects.order_by("pk")
    if scope is not None:
        rows = rows.filter(pk__in=scope.plants)
    found = rows.values_list(
        "pk",
        "holds",
        "came",
        "division__parent",
        "division__sport",
        "division__voided_reason",
        "sowing",
        "sowing__voided_reason",
        "identification__name",
        "identification__qualifier",
    )
    plants = {}
    for pk, holds, came, parent, sport, no_division, sowing, no_sowing, name, qualifier in found:
        piece_of = None if no_division or parent is None else same.get(parent, parent)
        piece_of = None if piece_of == pk else piece_of
        plants[pk] = PlantRecord(
            id=pk,
            is_pot=holds in (Holds.SEVERAL, Holds.KINDS),
            from_spores=came == "sowing",
            piece_of=piece_of,
            sport=bool(sport and piece_of),
            sowing=None if no_sowing else sowing,
            name=name,
            qualifier=qualifier or "",
        )
    return {pk: plant for pk, plant in plants.items() if pk not in same}


def _sowings(scope: Scope | None, wanted: set[int], same: dict[int, int]) -> dict[int, SowingRecord]:
    rows = SporeSowing.objects.filter(voided_reason="")
    sources = SporeSource.objects.order_by("pk")
    if scope is not None:
        rows, sources = rows.filter(pk__in=wanted), sources.filter(sowing__in=wanted)
    given: dict[int, list[Mentioned]] = {}
    for pk, sowing, plant, name in sources.values_list("pk", "sowing", "specimen", "name"):
        given.setdefault(sowing, []).append(Mentioned(f"source:{pk}", same.get(plant, plant), name))
    of_cross = ("cross", "cross__voided_reason", "cross__first_specimen", "cross__first_name")
    found = rows.values_list("pk", "determined", *of_cross, "cross__second_specimen", "cross__second_name")
    sowings = {}
    for pk, determined, cross, voided, plant1, name1, plant2, name2 in found:
        crossed = [] if cross is None or voided else [(1, plant1, name1), (2, plant2, name2)]
        partners = [Mentioned(f"cross:{cross}:{n}", same.get(p, p), name) for n, p, name in crossed]
        sowings[pk] = SowingRecord(determined, _merged(given.get(pk, []), partners))
    return sowings


def _merged(sources: list[Mentioned], partners: list[Mentioned]) -> tuple[Mentioned, ...]:
    """The sources, and those parents of the cross that no source speaks of."""
    spoken = {(source.plant, source.name) for source in sources}
    return (*sources, *(each for each in partners if (each.plant, each.name) not in spoken))


def _claims(scope: Scope | None, about: Q, subject: str, same: dict[int, int]) -> dict[int, ClaimRecord]:
    """Current claims by what they are about; of two records of one plant the earlier's claim goes first."""
    standing = Q(standing=ParentageClaim.Standing.CURRENT, **{f"{subject}__isnull": False})
    if scope is not None:
        standing &= about
    claims = ParentageClaim.objects.filter(standing).order_by("pk")
    parents: dict[int, list[Mentioned]] = {}
    rows = ClaimParent.objects.filter(claim__in=claims.values("pk")).order_by("claim", "order")
    for pk, claimed, plant, name in rows.values_list("pk", "claim", "specimen", "name"):
        parents.setdefault(claimed, []).append(Mentioned(f"claim-parent:{pk}", same.get(plant, plant), name))
    found: dict[int, ClaimRecord] = {}
    for pk, about_id, says, selfing, excluded in claims.values_list(
        "pk", subject, "says", "selfing", "selfs_excluded"
    ):
        claim = ClaimRecord(pk, says, selfing, excluded, tuple(parents.get(pk, ())))
        if about_id in same:
            found.setdefault(same[about_id], claim)
        else:
            found[about_id] = claim
    return found


def _names(ids: Collection[int] | None, same: dict[int, int]) -> dict[int, NameRecord]:
    rows = Name.objects.order_by("pk")
    if ids is not None:
        rows = rows.filter(pk__in=ids)
    found = rows.values_list(
        "pk", "rank", "parent", "accepted", "first_parent", "second_parent", "reproduction", "original_plant"
    )
    return {row[0]: NameRecord(*row[:7], same.get(row[7], row[7])) for row in found}


def _with_synonyms(names: set[int]) -> set[int]:
    return names | set(Name.objects.filter(accepted__in=names).values_list("pk", flat=True))


def _name_ids_above(names: Iterable[int | None]) -> set[int]:
    """These names and all their accepted names, parents and parents of hybrids, however far up; one query."""
    wanted = [name for name in set(names) if name is not None]
    if not wanted:
        return set()
    marks = ", ".join(["%s"] * len(wanted))
    table = connection.ops.quote_name(Name._meta.db_table)
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE above(id) AS (SELECT id FROM {table} WHERE id IN ({marks}) UNION "  # noqa: S608
            f"SELECT next.id FROM above JOIN {table} here ON here.id = above.id JOIN {table} next ON next.id IN "
            "(here.parent_id, here.accepted_id, here.first_parent_id, here.second_parent_id)) "
            "SELECT id FROM above",
            wanted,
        )
        return {pk for (pk,) in cursor.fetchall()}
