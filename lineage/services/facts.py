"""What pages say of a plant's lineage: for one plant or for a list, in a fixed number of queries."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from django.db import connection
from django.db.models import Count, Prefetch, Q

from frondkeep.society.models import User
from lineage.models import ClassShare, LineageNode, LineageParent, Origin, ParentageClass
from lineage.services.fact_words import (
    UNRELATED,
    division_words,
    generation_words,
    inbreeding_words,
    known_words,
    piece_words,
    share_words,
)
from lineage.services.former_claims import former_thoughts
from lineage.services.standing import same_plants
from specimens.models import Name, Specimen, State
from specimens.naming.names import Run

SPECIES_NOT_KNOWN = (Run("species not known", "roman"),)


@dataclass(frozen=True, slots=True)
class Share:
    """How much of one species is in a plant. `name_parts` fits the bar; `low` and `high` are per cent."""

    species: Name | None
    lo: float
    hi: float

    @property
    def name_parts(self) -> tuple[Run, ...]:
        return self.species.runs() if self.species else SPECIES_NOT_KNOWN

    @property
    def low(self) -> float:
        return 100 * self.lo

    @property
    def high(self) -> float:
        return 100 * self.hi

    @property
    def words(self) -> str:
        return share_words(self.lo, self.hi)

    @property
    def plain(self) -> str:
        return f"{self.species or 'species not known'}: {self.words}"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantLineage:
    """The lineage of one plant, as computed; words are ready for the page.

    `certainty` is recorded, assumed or unknown, the same three everywhere. `pieces` counts the recorded
    plants of this genotype, itself included. Pairs are bounds.
    """

    node_id: int
    origin: str
    certainty: str
    certainty_words: str
    shares: tuple[Share, ...]
    gen_min: int
    gen_max: int
    clonal_steps: int
    steps_counted: bool
    is_sport_line: bool
    pieces: int
    formerly: tuple[str, ...]
    inbreeding: tuple[float, float]
    eq_generations: tuple[float, float]
    completeness: float | None

    @property
    def composition_words(self) -> str:
        """“made of: Platycerium andinum: between a quarter and a half; …”."""
        return "made of: " + "; ".join(share.plain for share in self.shares)

    @property
    def origin_words(self) -> str:
        return Origin(self.origin).label

    @property
    def generation_words(self) -> str:
        return generation_words(self.gen_min, self.gen_max)

    @property
    def division_words(self) -> str:
        return division_words(self.clonal_steps, counted=self.steps_counted)

    @property
    def piece_words(self) -> str:
        return piece_words(self.pieces)

    @property
    def inbreeding_words(self) -> str:
        return inbreeding_words(*self.inbreeding)

    @property
    def known_words(self) -> str:
        return known_words(*self.eq_generations, self.completeness)

    @property
    def convention(self) -> str:
        return UNRELATED


def facts_of_specimen(specimen: Specimen, *, reader: User | None = None) -> PlantLineage | None:
    """The lineage of one plant; None only where it was never computed."""
    return facts_of([specimen], reader=reader).get(specimen.pk)


def facts_of(specimens: Sequence[Specimen], *, reader: User | None = None) -> dict[int, PlantLineage]:
    """The lineage of many plants, by their ids; at most eight queries, whatever their number.

    A plant that the reader may not see is never named; with no reader, none that is not shared.
    """
    same = same_plants()
    node_of = {one.pk: same.get(one.pk, one.pk) for one in specimens}
    facts = _facts(Q(specimen__in=set(node_of.values())), reader)
    by_plant = {node.specimen_id: fact for node, fact in facts}
    return {pk: by_plant[own] for pk, own in node_of.items() if own in by_plant}


def facts_of_name(name: Name, *, reader: User | None = None) -> PlantLineage | None:
    """The lineage of the plant behind a cultivar name kept by division; None for a name that is no plant."""
    return next((fact for _, fact in _facts(Q(name=name.accepted_id or name.pk), reader)), None)


def certainty_of(node: LineageNode) -> tuple[str, str]:
    """How sure a node's own origin is: recorded, assumed or unknown, with its words."""
    if node.link_dropped:
        return "unknown", "not known — its name would make it a piece of its own descendant"
    if node.origin == Origin.UNKNOWN:
        return "unknown", "not known"
    if node.as_sown:
        return "assumed", "as sown — stray spores are common"
    if node.by_name:
        return "assumed", "assumed from the name"
    if node.origin == Origin.MIXED:
        return "assumed", Origin.MIXED.label
    return "recorded", "recorded"


def _facts(which: Q, reader: User | None) -> list[tuple[LineageNode, PlantLineage]]:
    shares = Prefetch("parentage__shares", ClassShare.objects.select_related("species"))
    nodes = list(
        LineageNode.objects.filter(which, parentage__isnull=False, genet__isnull=False)
        .select_related("parentage", "genet")
        .prefetch_related(shares)
    )
    pieces = _pieces({node.genet_id for node in nodes if node.genet_id})
    joined_by_name = _joined_by_name([node.pk for node in nodes])
    thoughts = former_thoughts(nodes, reader)
    return [
        (
            node,
            _fact(
                node,
                node.parentage,
                pieces=pieces.get(node.genet_id or 0, 0),
                counted=node.pk not in joined_by_name,
                formerly=thoughts.get(node.pk, ()),
            ),
        )
        for node in nodes
        if node.parentage is not None
    ]


def _fact(
    node: LineageNode, parentage: ParentageClass, *, pieces: int, counted: bool, formerly: tuple[str, ...]
) -> PlantLineage:
    certainty, certainty_words = certainty_of(node)
    return PlantLineage(
        node_id=node.pk,
        origin=Origin.UNKNOWN.value if node.link_dropped else node.origin,
        certainty=certainty,
        certainty_words=certainty_words,
        shares=_largest_first(parentage.shares.all()),
        gen_min=parentage.gen_min,
        gen_max=parentage.gen_max,
        clonal_steps=node.clonal_steps,
        steps_counted=counted,
        is_sport_line=node.clone_line_id != node.genet_id,
        pieces=pieces,
        formerly=formerly,
        inbreeding=(parentage.f_lo, parentage.f_hi),
        eq_generations=(parentage.eq_lo, parentage.eq_hi),
        completeness=parentage.completeness,
    )


def _largest_first(shares: Iterable[ClassShare]) -> tuple[Share, ...]:
    """What is not known last."""
    made = [Share(share.species, share.lo, share.hi) for share in shares if share.hi > 0]
    return tuple(
        sorted(
            made,
            key=lambda share: (share.species is None, -share.hi, -share.lo, str(share.species)),
        )
    )


def _pieces(genets: set[int]) -> dict[int, int]:
    counted = (
        LineageNode.objects.filter(genet__in=genets, specimen__isnull=False)
        .exclude(specimen__state=State.MISTAKE)
        .values("genet")
        .annotate(count=Count("pk"))
    )
    return {row["genet"]: row["count"] for row in counted.order_by() if row["genet"]}


def _joined_by_name(pks: Sequence[int]) -> set[int]:
    """Which of these nodes are joined to their first plant by a name somewhere on the way; one query."""
    if not pks:
        return set()
    nodes = connection.ops.quote_name(LineageNode._meta.db_table)
    edges = connection.ops.quote_name(LineageParent._meta.db_table)
    marks = ", ".join(["%s"] * len(pks))
    clone = "node.origin IN ('division', 'apogamous') AND NOT node.link_dropped"
    with connection.cursor() as cursor:
        cursor.execute(
            f"WITH RECURSIVE up(start, id) AS (SELECT id, id FROM {nodes} WHERE id IN ({marks}) UNION "  # noqa: S608
            f"SELECT up.start, edge.parent_id FROM up JOIN {nodes} node ON node.id = up.id AND {clone} "
            f"JOIN {edges} edge ON edge.node_id = node.id WHERE edge.parent_id IS NOT NULL) "
            f"SELECT DISTINCT up.start FROM up JOIN {nodes} node ON node.id = up.id WHERE {clone} AND node.by_name",
            list(pks),
        )
        return {pk for (pk,) in cursor.fetchall()}
