"""From the nodes of a pedigree to the facts that are stored."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import blake2b
from typing import cast

from lineage.core import Fact, Node, Pedigree
from lineage.models import CLONE_ORIGINS, SPORE_ORIGINS
from lineage.services.definitions import NOT_KNOWN, Definition, Key


@dataclass(frozen=True, slots=True)
class NodeFacts:
    """What is particular to one node; the rest it shares with its class. `genet` is the first plant's key."""

    genet: Key
    clone_line: Key
    clonal_steps: int
    link_dropped: bool
    class_key: str


@dataclass(frozen=True, slots=True)
class ClassFacts:
    """What all plants of one parentage share; pairs are bounds, species are ids of names, None: not known."""

    gen_min: int
    gen_max: int
    eq: tuple[float, float]
    completeness: float | None
    inbreeding: tuple[float, float]
    shares: tuple[tuple[int | None, float, float], ...]


@dataclass(frozen=True, slots=True)
class Computed:
    nodes: dict[Key, NodeFacts]
    classes: dict[str, ClassFacts]


def pedigree_of(definitions: Mapping[Key, Definition]) -> Pedigree:
    """The pedigree of these nodes; all their parents are among them. Raises PedigreeError for a cycle."""
    return Pedigree(node_of(key, one) for key, one in definitions.items())


def compute(definitions: Mapping[Key, Definition]) -> Computed:
    """All facts of these nodes, which must hold their own ancestors. Raises PedigreeError for a cycle."""
    if not definitions:
        return Computed({}, {})
    pedigree = pedigree_of(definitions)
    dropped = {child for child, _ in pedigree.dropped_links}
    facts = {key: pedigree.fact(key) for key in definitions}
    nodes: dict[Key, NodeFacts] = {}
    classes: dict[str, ClassFacts] = {}
    keys: dict[Key, str] = {}
    for key, fact in facts.items():
        first = cast(Key, fact.genet)
        if first not in keys:
            keys[first] = class_key(NOT_KNOWN if first in dropped else definitions[first], facts)
            classes.setdefault(keys[first], class_facts(fact))
        line = cast(Key, fact.clone_line)
        nodes[key] = NodeFacts(first, line, fact.clonal_steps, key in dropped, keys[first])
    return Computed(nodes, classes)


def node_of(key: Key, definition: Definition) -> Node:
    return Node(
        key,
        definition.origin,
        parents=definition.parents,
        composition=None if definition.species is None else {definition.species: 1},
        selfing=definition.selfing or None,
        selfs_excluded=definition.selfs_excluded,
        sport=definition.sport,
        by_name=definition.by_name and definition.origin in CLONE_ORIGINS,
    )


def class_key(definition: Definition, facts: Mapping[Key, Fact]) -> str:
    """What plants of one parentage have in common: the origin and the first plants of the parents.

    Made of ids of records, so that it is the same after a rebuild, and shortened to 32 letters.
    """
    text = f"{definition.origin}|{definition.species or ''}"
    if definition.origin in SPORE_ORIGINS:
        genets = sorted(
            ":".join(map(str, cast(Key, facts[p].genet))) if p else "-" for p in definition.parents
        )
        text = f"{text}|{definition.selfing}|{definition.selfs_excluded:d}|{','.join(genets)}"
    return blake2b(text.encode(), digest_size=16).hexdigest()


def class_facts(fact: Fact) -> ClassFacts:
    shares = ((cast(int | None, species), lo, hi) for species, (lo, hi) in fact.composition.items())
    return ClassFacts(
        gen_min=fact.gen_min,
        gen_max=fact.gen_max,
        eq=fact.eq_generations,
        completeness=fact.completeness,
        inbreeding=fact.inbreeding,
        shares=tuple(sorted(shares, key=lambda share: (share[0] is None, share[0] or 0))),
    )
