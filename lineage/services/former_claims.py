"""What was thought before: claims of parentage that newer ones replaced."""

from __future__ import annotations

from collections.abc import Sequence

from django.db.models import Prefetch, Q
from django.utils import timezone

from frondkeep.society.models import User
from lineage.models import LineageNode
from specimens.models import ClaimParent, ParentageClaim, SeenBy, Specimen, State
from specimens.naming.sentences import HIDDEN_PLANT

NOT_KNOWN = "a plant not known"
SAYING = {
    "self": "from spores of {}",
    "sport": "a sport of {}",
    "piece": "a piece of {}",
    "apogamous": "the same as its parent {}, though from spores",
    "mixed": "sown together from {}",
    "unknown": "of unknown parents",
}


def former_thoughts(nodes: Sequence[LineageNode], reader: User | None) -> dict[int, tuple[str, ...]]:
    """For each node “until 2019 thought to be A × B”, newest first; of itself and of its first plant.

    Three queries, whatever the number. Plants the reader may not see are not named.
    """
    firsts = [first for node in nodes for first in (node, node.genet or node)]
    about = Q(specimen__in=[n.specimen_id for n in firsts]) | Q(name__in=[n.name_id for n in firsts])
    parents = ClaimParent.objects.select_related("specimen", "name").order_by("order")
    superseded = list(
        ParentageClaim.objects.filter(about, standing=ParentageClaim.Standing.SUPERSEDED)
        .prefetch_related(Prefetch("parents", parents))
        .order_by("-superseded_at", "-pk")
    )
    shown = shown_ids({parent.specimen_id for claim in superseded for parent in claim.parents.all()}, reader)
    thoughts = {node.pk: _about(node, superseded, shown) for node in nodes}
    return {pk: words for pk, words in thoughts.items() if words}


def shown_ids(plants: set[int | None], reader: User | None) -> set[int]:
    """Which of these plants may be named to the reader; with no reader, those shared with every member."""
    wanted = {plant for plant in plants if plant is not None}
    if not wanted:
        return set()
    if reader is not None:
        seen = Specimen.objects.visible_to(reader)
    else:
        seen = Specimen.objects.filter(seen_by=SeenBy.MEMBERS).exclude(state=State.MISTAKE)
    return set(seen.filter(pk__in=wanted).values_list("pk", flat=True))


def _about(node: LineageNode, claims: Sequence[ParentageClaim], shown: set[int]) -> tuple[str, ...]:
    first = node.genet or node
    plants = {node.specimen_id, first.specimen_id} - {None}
    names = {node.name_id, first.name_id} - {None}
    return tuple(
        claim_words(claim, shown) for claim in claims if claim.specimen_id in plants or claim.name_id in names
    )


def claim_words(claim: ParentageClaim, shown: set[int]) -> str:
    """“until 2019 thought to be A × B”."""
    year = timezone.localtime(claim.superseded_at).year if claim.superseded_at else None
    until = f"until {year} thought to be" if year else "formerly thought to be"
    parents = [_parent_words(parent, shown) for parent in claim.parents.all()]
    if claim.says == "cross":
        return f"{until} {' × '.join(parents)}"
    return f"{until} {SAYING[claim.says].format(' and '.join(parents))}"


def _parent_words(parent: ClaimParent, shown: set[int]) -> str:
    if parent.specimen is not None:
        return parent.specimen.code if parent.specimen_id in shown else HIDDEN_PLANT
    return str(parent.name or parent.words or NOT_KNOWN)
