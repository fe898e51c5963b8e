"""From records to the nodes of a pedigree."""

from __future__ import annotations

from lineage.services.definitions import Definition, Key
from lineage.services.name_origins import NameOrigins, is_clonal
from lineage.services.plant_origins import PlantOrigins
from lineage.services.records import NameRecord, Records, Scope


def derive(records: Records, scope: Scope | None = None) -> dict[Key, Definition]:
    """The definitions of all plants and cultivars of the records, or of a scope, and of whom they mention.

    Only accepted names of cultivars kept by division are nodes; a record ruled to be of an earlier plant
    is none. Raises PedigreeError where pots of several are pieces of each other.
    """
    by_name = NameOrigins(records)
    by_record = PlantOrigins(records, by_name)
    made = {Key.plant(pk): by_record.of_plant(plant) for pk, plant in records.plants.items()}
    for pk, name in records.names.items():
        if is_node(name) and (scope is None or pk in scope.names):
            made[Key.name(pk)] = by_name.of_cultivar(name)
    return _with_mentions(made, by_name.mentions)


def _with_mentions(made: dict[Key, Definition], mentions: dict[Key, Definition]) -> dict[Key, Definition]:
    """The nodes, and those mentioned plants that one of them comes from."""
    waiting = [parent for one in made.values() for parent in one.parents]
    while waiting:
        key = waiting.pop()
        if key is not None and key in mentions and key not in made:
            made[key] = mentions[key]
            waiting.extend(mentions[key].parents)
    return made


def is_node(name: NameRecord) -> bool:
    return is_clonal(name) and name.accepted in (None, name.id)
