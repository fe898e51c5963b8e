"""A plant's ancestors as one reader may see them, with runs of divisions folded into one step."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping
from dataclasses import dataclass

from django.urls import reverse

from frondkeep.society.models import User
from lineage.models import CLONE_ORIGINS, LineageNode, LineageParent, Origin
from lineage.services.facts import certainty_of
from lineage.services.former_claims import shown_ids
from lineage.services.stored import ids_above
from specimens.models import Specimen, State
from specimens.naming.names import Run, plain
from specimens.naming.sentences import HIDDEN_PLANT
from specimens.services.shown_names import shown_name

# More than this many plants are no drawing any more; what lies further up is said to be left out.
MOST = 60
ENDED = {
    State.DEAD: "dead",
    State.LEFT: "left the society",
    State.LOST: "cannot be found",
    State.STOLEN: "stolen",
}
NOT_ON_RECORD = (Run("a plant not on record", "roman"),)
HYBRID_NOT_ON_RECORD = (Run("a hybrid not on record", "roman"),)


@dataclass(frozen=True, slots=True)
class Step:
    """How a plant came from a parent. `parent` None is a plant not known; `divisions` counts folded ones."""

    parent: int | None
    spores: bool
    certainty: str
    divisions: int = 0
    by_name: bool = False

    @property
    def words(self) -> str:
        """What stands beside the line: “4 divisions”, “by its name”; '' where the line says it all."""
        if self.by_name:
            return "by its name"
        if self.spores or not self.divisions:
            return ""
        return f"{self.divisions} division{'s' if self.divisions > 1 else ''}"


@dataclass(frozen=True, slots=True)
class Relative:
    """One plant of the drawing, as this reader may see it: one not shown has no code, address or name.

    `standing` says what somebody is that has no record of its own.
    """

    id: int
    runs: tuple[Run, ...]
    code: str
    standing: str
    url: str
    state: str
    note: str
    certainty: str
    steps: tuple[Step, ...]
    is_here: bool = False
    is_cut: bool = False

    @property
    def title(self) -> str:
        return plain(self.runs)


def ancestry_of(node: LineageNode, reader: User) -> dict[int, Relative]:
    """The node and its nearest ancestors, parents after their children; nine queries, whatever the number."""
    rows = _nearest(node.pk)
    plants = _plants({row.specimen_id for row in rows.values()})
    shown = shown_ids({row.specimen_id for row in rows.values()}, reader)
    return {
        pk: _relative(row, rows, plants.get(row.specimen_id or 0), shown, here=node.pk)
        for pk, row in rows.items()
    }


@dataclass(frozen=True, slots=True)
class _Row:
    """A stored node with the steps to its parents, after folding."""

    node: LineageNode
    steps: tuple[Step, ...]

    @property
    def specimen_id(self) -> int | None:
        return self.node.specimen_id


def _nearest(start: int) -> dict[int, _Row]:
    above = ids_above([start])
    nodes = LineageNode.objects.select_related("name", "species").in_bulk(above)
    parents: dict[int, list[int | None]] = {}
    for child, parent in LineageParent.objects.filter(node__in=above).values_list("node", "parent"):
        parents.setdefault(child, []).append(parent)
    children = Counter(parent for found in parents.values() for parent in found)
    rows: dict[int, _Row] = {}
    waiting = [start]
    while waiting and len(rows) < MOST:
        pk = waiting.pop(0)
        if pk in rows:
            continue
        steps = _steps(nodes[pk], nodes, parents, children)
        rows[pk] = _Row(nodes[pk], steps)
        waiting += [step.parent for step in steps if step.parent is not None]
    return rows


def _steps(
    node: LineageNode,
    nodes: Mapping[int, LineageNode],
    parents: Mapping[int, list[int | None]],
    children: Mapping[int | None, int],
) -> tuple[Step, ...]:
    if node.link_dropped:
        return ()
    certainty = certainty_of(node)[0]
    if node.origin not in CLONE_ORIGINS:
        # A plant not known is dotted, whatever is sure about how it was joined.
        return tuple(
            Step(parent, True, certainty if parent is not None else "unknown")
            for parent in parents.get(node.pk, ())
        )
    (parent,) = parents[node.pk]
    if node.origin == Origin.APOGAMOUS or node.by_name:
        return (Step(parent, False, certainty, by_name=node.by_name),)
    divisions = 1
    while (
        parent is not None and not node.sport and _is_mere_division(nodes[parent]) and children[parent] == 1
    ):
        (parent,) = parents[parent]
        divisions += 1
    return (Step(parent, False, certainty, divisions),)


def _is_mere_division(node: LineageNode) -> bool:
    """A piece on record between two others, of which nothing else is to be told."""
    division = node.origin == Origin.DIVISION and node.specimen_id is not None
    return division and not (node.by_name or node.sport or node.link_dropped)


def _plants(ids: Collection[int | None]) -> dict[int, Specimen]:
    wanted = {pk for pk in ids if pk is not None}
    return Specimen.objects.filter(pk__in=wanted).with_page_parts().in_bulk()


def _relative(
    row: _Row, rows: Mapping[int, _Row], plant: Specimen | None, shown: set[int], *, here: int
) -> Relative:
    node = row.node
    hidden = plant is not None and plant.pk not in shown
    return Relative(
        id=node.pk,
        runs=(Run(HIDDEN_PLANT, "roman"),) if hidden else _runs(node, plant),
        code="" if hidden or plant is None else plant.code,
        standing=_standing(node),
        url="" if hidden else _url(node, plant),
        state="" if hidden or plant is None else ENDED.get(State(plant.state), ""),
        note=_note(node),
        certainty=certainty_of(node)[0],
        steps=tuple(step for step in row.steps if step.parent is None or step.parent in rows),
        is_here=node.pk == here,
        is_cut=any(step.parent is not None and step.parent not in rows for step in row.steps),
    )


def _runs(node: LineageNode, plant: Specimen | None) -> tuple[Run, ...]:
    if plant is not None:
        return shown_name(plant, short_genus=True).runs
    named = node.name or node.species
    if named is not None:
        return named.runs(short_genus=True)
    return HYBRID_NOT_ON_RECORD if node.origin == Origin.CROSS else NOT_ON_RECORD


def _url(node: LineageNode, plant: Specimen | None) -> str:
    if plant is not None:
        return reverse("plant", args=[plant.code])
    named = node.name or node.species
    return reverse("name", args=[named.pk]) if named else ""


def _standing(node: LineageNode) -> str:
    if node.mention is not None:
        return "not on record"
    return "the plant of that name" if node.name_id is not None else ""


def _note(node: LineageNode) -> str:
    """How it came, in the words of the pages."""
    if node.link_dropped or node.origin == Origin.UNKNOWN:
        return "origin not known"
    if node.sport:
        return "it came out different"
    if node.origin == Origin.DIVISION:
        return "assumed from the name" if node.by_name else "a piece"
    words = Origin(node.origin).label
    return f"{words}, as sown" if node.as_sown and node.origin != Origin.MIXED else words
