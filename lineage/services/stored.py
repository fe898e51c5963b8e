"""Lineage as it is stored: read back as definitions and facts, whole or around a few nodes."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from django.db import connection
from django.db.models import Q

from lineage.models import ClassShare, LineageNode, LineageParent, ParentageClass
from lineage.services.computing import ClassFacts, NodeFacts
from lineage.services.definitions import Definition, Key

OWN = ("specimen", "name", "mention")
GENET = tuple(f"genet__{column}" for column in OWN)
LINE = tuple(f"clone_line__{column}" for column in OWN)
PARENT = tuple(f"parent__{column}" for column in OWN)
FACT_COLUMNS = ("clonal_steps", "link_dropped", "parentage__key")
DEFINITION_COLUMNS = ("origin", "species", "selfing", "selfs_excluded", "sport", "by_name", "as_sown")


@dataclass(frozen=True, slots=True)
class StoredNode:
    """One row; `facts` is None where the row has never been computed."""

    pk: int
    definition: Definition
    facts: NodeFacts | None


@dataclass(frozen=True, slots=True)
class StoredClass:
    pk: int
    facts: ClassFacts


def key_of(specimen: int | None, name: int | None, mention: str | None) -> Key:
    if specimen is not None:
        return Key.plant(specimen)
    return Key.name(name) if name is not None else Key.mention(mention or "")


def read_nodes(pks: Collection[int] | None = None) -> dict[Key, StoredNode]:
    """Stored nodes by key, all or these; two queries."""
    rows = LineageNode.objects.all()
    edges = LineageParent.objects.order_by("node", "order")
    if pks is not None:
        rows, edges = rows.filter(pk__in=pks), edges.filter(node__in=pks)
    parents: dict[int, list[Key | None]] = {}
    for node, parent, *own in edges.values_list("node", "parent", *PARENT):
        parents.setdefault(node, []).append(None if parent is None else key_of(*own))
    nodes = {}
    for row in rows.values_list("pk", *OWN, *GENET, *LINE, *FACT_COLUMNS, *DEFINITION_COLUMNS):
        pk, own, genet, line, facts, (origin, *rest) = (
            row[0],
            row[1:4],
            row[4:7],
            row[7:10],
            row[10:13],
            row[13:],
        )
        known = any(genet) and any(line) and facts[-1] is not None
        nodes[key_of(*own)] = StoredNode(
            pk,
            Definition(origin, tuple(parents.get(pk, ())), *rest),
            NodeFacts(key_of(*genet), key_of(*line), *facts) if known else None,
        )
    return nodes


def read_classes(keys: Collection[str] | None = None) -> dict[str, StoredClass]:
    """Stored classes by key, all or these; two queries."""
    rows, shares = ParentageClass.objects.all(), ClassShare.objects.order_by("species", "pk")
    if keys is not None:
        rows, shares = rows.filter(key__in=keys), shares.filter(parentage__key__in=keys)
    made_of: dict[int, list[tuple[int | None, float, float]]] = {}
    for parentage, species, lo, hi in shares.values_list("parentage", "species", "lo", "hi"):
        made_of.setdefault(parentage, []).append((species, lo, hi))
    stored = {}
    for row in rows:
        parts = sorted(made_of.get(row.pk, ()), key=lambda share: (share[0] is None, share[0] or 0))
        eq, inbreeding = (row.eq_lo, row.eq_hi), (row.f_lo, row.f_hi)
        facts = ClassFacts(row.gen_min, row.gen_max, eq, row.completeness, inbreeding, tuple(parts))
        stored[row.key] = StoredClass(row.pk, facts)
    return stored


def ids_of(keys: Iterable[Key]) -> dict[Key, int]:
    """Which of these nodes are stored, with their ids; one query."""
    refs: dict[str, list[int | str]] = {"plant": [], "name": [], "mention": []}
    for key in keys:
        refs[key.kind].append(key.ref)
    wanted = Q(specimen__in=refs["plant"]) | Q(name__in=refs["name"]) | Q(mention__in=refs["mention"])
    rows = LineageNode.objects.filter(wanted).values_list("pk", "specimen", "name", "mention")
    return {key_of(*row[1:]): row[0] for row in rows}


def ids_below(pks: Collection[int]) -> set[int]:
    """These nodes and all that descend from them, by any link; one query."""
    return _reached(pks, known="parent_id", wanted="node_id")


def ids_above(pks: Collection[int]) -> set[int]:
    """These nodes and all they descend from, by any link; one query."""
    return _reached(pks, known="node_id", wanted="parent_id")


def _reached(pks: Collection[int], *, known: str, wanted: str) -> set[int]:
    if not pks:
        return set()
    nodes = connection.ops.quote_name(LineageNode._meta.db_table)
    edges = connection.ops.quote_name(LineageParent._meta.db_table)
    marks = ", ".join(["%s"] * len(pks))
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE reached(id) AS (SELECT id FROM {nodes} WHERE id IN ({marks}) UNION "  # noqa: S608
            f"SELECT edge.{wanted} FROM reached JOIN {edges} edge ON edge.{known} = reached.id "
            f"WHERE edge.{wanted} IS NOT NULL) SELECT id FROM reached",
            list(pks),
        )
        return {pk for (pk,) in cursor.fetchall()}
