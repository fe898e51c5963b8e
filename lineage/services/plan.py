"""What differs between lineage as stored and as computed: the rows to be written, and no other."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lineage.services.computing import ClassFacts, Computed, NodeFacts
from lineage.services.definitions import Definition, Key
from lineage.services.stored import StoredClass, StoredNode


@dataclass(frozen=True, slots=True)
class Plan:
    """Nodes to be written (created where `node_ids` has none), nodes to be removed, classes to be written.

    `moved` nodes have other parents than before; `left` are classes that nodes left, perhaps empty now.
    """

    nodes: dict[Key, tuple[Definition, NodeFacts]]
    moved: frozenset[Key]
    removed: dict[Key, int]
    classes: dict[str, ClassFacts]
    left: frozenset[str]
    node_ids: dict[Key, int]
    class_ids: dict[str, int]

    @property
    def is_empty(self) -> bool:
        return not (self.nodes or self.removed or self.classes)

    def words(self) -> Iterator[str]:
        """One line for every difference."""
        for key in self.nodes:
            yield f"{key.kind} {key.ref}: {'differs' if key in self.node_ids else 'is missing'}"
        for key in self.removed:
            yield f"{key.kind} {key.ref}: should not be there"
        for parentage in self.classes:
            yield f"parentage {parentage}: {'differs' if parentage in self.class_ids else 'is missing'}"


def plan(
    definitions: Mapping[Key, Definition],
    computed: Computed,
    nodes: Mapping[Key, StoredNode],
    classes: Mapping[str, StoredClass],
) -> Plan:
    """What to write so that the stored nodes and classes become the computed ones."""
    differing = {
        key: (definition, computed.nodes[key])
        for key, definition in definitions.items()
        if key not in nodes or nodes[key].definition != definition or nodes[key].facts != computed.nodes[key]
    }
    moved = {
        k for k, (d, _) in differing.items() if k not in nodes or nodes[k].definition.parents != d.parents
    }
    removed = {key: node.pk for key, node in nodes.items() if key not in definitions}
    before = [nodes[key].facts for key in (*differing, *removed) if key in nodes]
    fresh = {k: f for k, f in computed.classes.items() if k not in classes or classes[k].facts != f}
    return Plan(
        nodes=differing,
        moved=frozenset(moved),
        removed=removed,
        classes=fresh,
        left=frozenset(facts.class_key for facts in before if facts) - computed.classes.keys(),
        node_ids={key: node.pk for key, node in nodes.items()},
        class_ids={key: stored.pk for key, stored in classes.items()},
    )


NOTHING_TO_WRITE = Plan({}, frozenset(), {}, {}, frozenset(), {}, {})
