"""Keeps what is computed right: runs inside the transaction of every change of a record."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from lineage.services.accepted import refresh_accepted
from lineage.services.affected import affected_by
from lineage.services.plan import NOTHING_TO_WRITE
from lineage.services.planning import plan_around
from lineage.services.suspicions import note_change
from lineage.services.writing import write


def refresh(kind: str, ids: Collection[int]) -> None:
    """Bring accepted names and lineage up to date after these records changed; note what to weigh anew.

    Raises DescentError where a plant would come from itself; the caller's transaction is then undone.
    """
    if kind in ("names", "placements"):
        ids = {*ids, *refresh_accepted(ids)}
    scope = affected_by(kind, ids)
    found = plan_around(scope) if scope.plants or scope.names else NOTHING_TO_WRITE
    write(found)
    moved: dict[str, set[Any]] = {"plant": set(), "name": set(), "mention": set()}
    for key in (*found.nodes, *found.removed):
        moved[key.kind].add(key.ref)
    note_change(kind, ids, plants=moved["plant"], names=moved["name"])
