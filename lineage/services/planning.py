"""Finds what is to be written after a change: around the plants it touches, or everywhere."""

from __future__ import annotations

from collections.abc import Mapping

from lineage.core import PedigreeError
from lineage.services.computing import compute
from lineage.services.definitions import Definition, Key
from lineage.services.descent import descent_error
from lineage.services.graph import derive
from lineage.services.plan import NOTHING_TO_WRITE, Plan, plan
from lineage.services.records import Scope, load_records
from lineage.services.stored import (
    StoredNode,
    ids_above,
    ids_below,
    ids_of,
    read_classes,
    read_nodes,
)

# Beyond this many plants it is cheaper to compute everything anew.
MANY = 2_000


def plan_everything() -> Plan:
    """What would have to be written for the stored lineage to be what the records say.

    Raises DescentError where a plant would come from itself.
    """
    try:
        definitions = derive(load_records())
        computed = compute(definitions)
    except PedigreeError as found:
        raise descent_error(found) from found
    return plan(definitions, computed, read_nodes(), read_classes())


def plan_around(scope: Scope) -> Plan:
    """The same where only what comes of these plants and names can differ; some fifteen queries at most."""
    if len(scope.plants) + len(scope.names) > MANY:
        return plan_everything()
    try:
        return _plan_around(scope)
    except PedigreeError:
        # Amid many changes at once what is stored may still be out of date; all records together decide.
        return plan_everything()


def touched_by(scope: Scope) -> set[int]:
    """Ids of the stored nodes in a scope and of all that come of them."""
    return ids_below(set(ids_of(_keys(scope)).values()))


def _plan_around(scope: Scope) -> Plan:
    derived = derive(load_records(scope), scope)
    stored = read_nodes(set(ids_of({*derived, *_keys(scope)}).values()))
    changed = {key: one for key, one in derived.items() if _differs(key, one, stored)}
    gone = _keys(scope) & stored.keys() - derived.keys()
    if not changed and not gone:
        return NOTHING_TO_WRITE
    seeds = {stored[key].pk for key in (*changed, *gone) if key in stored}
    parents = {parent for one in changed.values() for parent in one.parents if parent is not None}
    nodes = read_nodes(ids_above(ids_below(seeds) | set(ids_of(parents).values())))
    definitions = {key: node.definition for key, node in nodes.items() if key not in gone} | changed
    computed = compute(definitions)
    return plan(definitions, computed, nodes, read_classes(computed.classes.keys()))


def _keys(scope: Scope) -> set[Key]:
    return {*map(Key.plant, scope.plants), *map(Key.name, scope.names)}


def _differs(key: Key, one: Definition, stored: Mapping[Key, StoredNode]) -> bool:
    return key not in stored or stored[key].facts is None or stored[key].definition != one
