"""How many plants' lineage a change would touch, asked before somebody decides."""

from __future__ import annotations

from collections.abc import Collection

from lineage.models import LineageNode
from lineage.services.affected import affected_by
from lineage.services.planning import touched_by
from specimens.changes import Touched
from specimens.models import State


def foresee_lineage(kind: str, ids: Collection[int]) -> list[Touched]:
    """The plants on record whose lineage rests on these records; nothing where there are none."""
    nodes = LineageNode.objects.filter(pk__in=touched_by(affected_by(kind, ids)), specimen__isnull=False)
    count = nodes.exclude(specimen__state=State.MISTAKE).count()
    if not count:
        return []
    plants = "one plant" if count == 1 else f"{count} plants"
    return [Touched("lineage", count, f"The lineage of {plants} rests on this.")]
