"""What is on record of cultivar names that could tell whether two of them are one plant."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from datetime import date

from django.db.models import QuerySet

from lineage.models import SPORE_ORIGINS, LineageParent
from specimens.models import ClaimParent, Keeping, Name, ParentageClaim, Photo, Specimen, State, TraitRecord
from specimens.services.names import NOT_PLACED

UNKNOWN_WORDS = "a plant not known"
# What `texts_of` takes.
WRITTEN = ("written", "epithet", "group__epithet", "genus__epithet")


@dataclass(frozen=True, slots=True)
class Parent:
    """A recorded parent. `plant` is the first plant of its clone, where it is one plant; else `species` is all."""

    plant: int | None
    species: int | None
    words: str

    @property
    def is_known(self) -> bool:
        return self.plant is not None or self.species is not None


@dataclass(frozen=True, slots=True)
class Trait:
    label: str
    stable: bool
    states: tuple[str, ...]


@dataclass(slots=True)
class NameClues:
    """All of one name. `texts` are the ways it is written, as it stands on record first.

    `lines` are clone lines of its plants (each with a code), `pictures` likewise by hash. `parents` is None
    where nothing is recorded; `growers` are keepers with a growing plant.
    """

    id: int
    texts: tuple[str, ...]
    genus: str
    raiser: str
    introduced: tuple[date | None, date | None]
    parents: tuple[Parent, ...] | None = None
    traits: dict[str, Trait] = field(default_factory=dict)
    lines: dict[int, str] = field(default_factory=dict)
    pictures: dict[str, str] = field(default_factory=dict)
    growers: set[int] = field(default_factory=set)


def read_clues(names: QuerySet[Name]) -> dict[int, NameClues]:
    """What is on record of these names, by id; nine queries, whatever the number."""
    rows = names.order_by("pk").values_list(
        "raiser", "introduced_earliest", "introduced_latest", "pk", *WRITTEN
    )
    clues = {
        pk: NameClues(pk, texts_of(*written), genus_of(written[-1]), raiser, (earliest, latest))
        for raiser, earliest, latest, pk, *written in rows
    }
    ids = names.order_by().values_list("pk", flat=True)
    genets = _read_plants(clues, ids)
    _read_growers(clues, ids)
    _read_parents(clues, ids, genets)
    _read_traits(clues, ids)
    _read_pictures(clues, ids)
    return clues


def texts_of(written: str, epithet: str, group: str | None, genus: str | None) -> tuple[str, ...]:
    """How a name may be written: as it is, and with its Group's name put before it, as old lists do."""
    return (written, f"{genus_of(genus)} ‘{group} {epithet}’") if group else (written,)


def genus_of(epithet: str | None) -> str:
    """The genus that names are compared in; '' where it is not known."""
    return "" if epithet is None or epithet == NOT_PLACED else epithet


def surely_named(ids: Iterable[int], *, at: str = "") -> dict[str, object]:
    """The condition that a plant is firmly thought to bear one of these names; doubt tells nothing of a name."""
    return {f"{at}identification__name__in": ids, f"{at}identification__qualifier": ""}


def _read_plants(clues: Mapping[int, NameClues], ids: Iterable[int]) -> dict[int, set[int]]:
    """Fill in the clone lines; returns the first plants of each name's plants that came from spores."""
    genets: dict[int, set[int]] = defaultdict(set)
    plants = Specimen.objects.standing().filter(lineage_node__isnull=False, **surely_named(ids))
    node = "lineage_node__"
    for name, code, line, genet, origin in plants.order_by("code").values_list(
        "identification__name", "code", f"{node}clone_line", f"{node}genet", f"{node}genet__origin"
    ):
        clues[name].lines.setdefault(line, code)
        if origin in SPORE_ORIGINS:
            genets[name].add(genet)
    return genets


def _read_growers(clues: Mapping[int, NameClues], ids: Iterable[int]) -> None:
    kept = Keeping.objects.filter(
        is_open=True, specimen__state=State.GROWING, **surely_named(ids, at="specimen__")
    )
    for name, keeper in kept.values_list("specimen__identification__name", "keeper").order_by("pk"):
        clues[name].growers.add(keeper)


def _read_parents(clues: Mapping[int, NameClues], ids: Iterable[int], genets: Mapping[int, set[int]]) -> None:
    """The parents its current claim names; without a claim, those its plants were raised from, if they agree."""
    claimed = _claimed_parents(ids)
    wanted = {pk for name, found in genets.items() if name not in claimed for pk in found}
    raised = _recorded_parents(wanted)
    for name, parents in claimed.items():
        clues[name].parents = parents
    for name, found in genets.items():
        told = {raised[pk] for pk in found if pk in raised}
        if name not in claimed and len(told) == 1:
            clues[name].parents = told.pop()


def _claimed_parents(ids: Iterable[int]) -> dict[int, tuple[Parent, ...]]:
    claims = ParentageClaim.objects.filter(name__in=ids, standing=ParentageClaim.Standing.CURRENT)
    by_name: dict[int, list[Parent]] = defaultdict(list)
    rows = ClaimParent.objects.filter(claim__in=claims).order_by("claim", "order")
    of_name, of_plant = "name__accepted__", "specimen__lineage_node__genet"
    for about, name, written, clone, plant, species, code in rows.values_list(
        "claim__name",
        "name__accepted",
        f"{of_name}written",
        f"{of_name}lineage_node__genet",
        of_plant,
        f"{of_plant}__species",
        "specimen__code",
    ):
        anonymous = name if clone is None else None
        parent = Parent(plant or clone, species or anonymous, written or code or UNKNOWN_WORDS)
        by_name[about].append(parent)
    return {name: tuple(sorted(parents, key=_order)) for name, parents in by_name.items()}


def _recorded_parents(genets: set[int]) -> dict[int, tuple[Parent, ...]]:
    """The parents of these first plants, as lineage has them."""
    by_genet: dict[int, list[Parent]] = defaultdict(list)
    edges = LineageParent.objects.filter(node__in=genets).order_by("node", "order")
    for node, first, mention, species, written, name, code in edges.values_list(
        "node",
        "parent__genet",
        "parent__mention",
        "parent__genet__species",
        "parent__genet__species__written",
        "parent__genet__name__written",
        "parent__genet__specimen__code",
    ):
        # A plant merely mentioned is of no clone that another record could mean.
        plant = None if mention else first
        by_genet[node].append(Parent(plant, species, name or written or code or UNKNOWN_WORDS))
    return {node: tuple(sorted(parents, key=_order)) for node, parents in by_genet.items()}


def _order(parent: Parent) -> tuple[str, int, int]:
    return parent.words, parent.plant or 0, parent.species or 0


def _read_traits(clues: Mapping[int, NameClues], ids: Iterable[int]) -> None:
    records = TraitRecord.objects.filter(name__in=ids).order_by("state__trait__order", "state__order")
    trait = "state__trait__"
    for name, key, label, stable, state in records.values_list(
        "name", f"{trait}key", f"{trait}label", f"{trait}stable", "state__label"
    ):
        before = clues[name].traits.get(key)
        states = (*before.states, state) if before else (state,)
        clues[name].traits[key] = Trait(label, stable, states)


def _read_pictures(clues: Mapping[int, NameClues], ids: Iterable[int]) -> None:
    photos = Photo.objects.filter(is_drawing=False, **surely_named(ids, at="specimen__"))
    for name, picture, code in (
        photos.exclude(difference_hash="")
        .order_by("pk")
        .values_list("specimen__identification__name", "difference_hash", "specimen__code")
    ):
        clues[name].pictures.setdefault(picture, code)
