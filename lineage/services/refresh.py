"""Keeps what is computed right: runs inside the transaction of every change of a record."""

from __future__ import annotations

from collections.abc import Collection

from lineage.core import PedigreeError
from lineage.services.accepted import refresh_accepted
from lineage.services.computing import compute
from lineage.services.descent import descent_error
from lineage.services.graph import derive
from lineage.services.plan import Plan, plan
from lineage.services.records import load_records
from lineage.services.stored import read_classes, read_nodes
from lineage.services.writing import write

# Kinds of records that say nothing of names or descent.
SILENT = frozenset({"photos", "keepings", "vocabulary"})


def refresh(kind: str, ids: Collection[int]) -> None:
    """Bring accepted names and lineage up to date after these records changed.

    Raises DescentError where a plant would come from itself; the caller's transaction is then undone.
    """
    if kind in SILENT:
        return
    if kind in ("names", "placements"):
        refresh_accepted(ids)
    write(plan_everything())


def plan_everything() -> Plan:
    """What would have to be written for the stored lineage to be what the records say."""
    try:
        definitions = derive(load_records())
        computed = compute(definitions)
    except PedigreeError as found:
        raise descent_error(found) from found
    return plan(definitions, computed, read_nodes(), read_classes())
