"""The traits a portrait is drawn from: the plant's own, else its name's, else those of the name above."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.db.models import QuerySet

from specimens.models import Name, Specimen, TraitRecord


@dataclass(frozen=True, slots=True)
class Sitter:
    """Who sits for a portrait: a seed that never changes, a genus, and trait keys with their states."""

    seed: str
    genus: str
    traits: dict[str, str]


def sitters_for_plants(plants: Sequence[Specimen]) -> dict[int, Sitter]:
    """Sitters by plant id. Two queries; names and accepted names must have been fetched with the plants."""
    names = {plant.pk: shown for plant in plants if (shown := accepted_name(plant))}
    of_names = traits_of_names(names.values())
    own = states_by_owner(TraitRecord.objects.filter(specimen__in=plants), "specimen_id")
    return {
        plant.pk: Sitter(
            plant.code,
            genus_word(names.get(plant.pk)),
            {**of_names.get(names[plant.pk].pk, {}), **own.get(plant.pk, {})}
            if plant.pk in names
            else own.get(plant.pk, {}),
        )
        for plant in plants
    }


def sitters_for_names(names: Sequence[Name]) -> dict[int, Sitter]:
    """Sitters by name id. One query."""
    traits = traits_of_names(names)
    return {name.pk: Sitter(f"name-{name.pk}", genus_word(name), traits.get(name.pk, {})) for name in names}


def accepted_name(plant: Specimen) -> Name | None:
    thought = plant.identification
    return (thought.name.accepted or thought.name) if thought and thought.name else None


def genus_word(name: Name | None) -> str:
    if name is None:
        return ""
    written = name.parts.get("formula", [name.parts])[0]
    return str(written.get("genus", ""))


def traits_of_names(names: Iterable[Name]) -> dict[int, dict[str, str]]:
    """Trait states by name id; what is not on record for a name is taken from the name above it."""
    names = list(names)
    ids = {name.pk for name in names} | {name.parent_id for name in names if name.parent_id}
    states = states_by_owner(TraitRecord.objects.filter(name__in=ids), "name_id")
    return {name.pk: {**states.get(name.parent_id or 0, {}), **states.get(name.pk, {})} for name in names}


def states_by_owner(records: QuerySet[TraitRecord], owner: str) -> dict[int, dict[str, str]]:
    found: dict[int, dict[str, str]] = defaultdict(dict)
    rows = records.values_list(owner, "state__trait__key", "state__key")
    for owner_id, trait, state in rows.order_by("pk"):
        found[owner_id].setdefault(trait, state)
    return found
