"""Claims of parentage: a new one supersedes, none is deleted."""

from __future__ import annotations

from typing import Any

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import User
from specimens.changes import announce
from specimens.models import ClaimParent, Name, ParentageClaim, Specimen
from specimens.services.sowings import Source

PARENTS_NEEDED = {
    "cross": (2, 2),
    "self": (1, 1),
    "mixed": (1, 12),
    "sport": (1, 1),
    "piece": (1, 1),
    "apogamous": (1, 1),
    "unknown": (0, 0),
}


@transaction.atomic
def claim_parentage(
    about: Specimen | Name,
    *,
    says: str,
    parents: tuple[Source, ...] = (),
    ground: str,
    by: User | None = None,
    egg_parent: int | None = None,
    superseding_because: str = "",
    **fields: Any,
) -> ParentageClaim:
    """A new current claim about a plant or a name; the one that stood before is kept as formerly thought.

    `egg_parent` is the position (1 or 2) of the egg parent. Raises ValueError for a wrong number of
    parents, and whatever the refresher raises where the claim would make a plant its own ancestor.
    """
    fewest, most = PARENTS_NEEDED[says]
    if not fewest <= len(parents) <= most:
        raise ValueError(
            f"This needs {fewest} parents." if fewest == most else f"This needs {fewest} to {most} parents."
        )
    subject = {"specimen": about} if isinstance(about, Specimen) else {"name": about}
    for former in ParentageClaim.objects.select_for_update(of=("self",)).filter(
        standing="current", **subject
    ):
        former.standing, former.superseded_at, former.superseded_reason = (
            "superseded",
            timezone.now(),
            superseding_because,
        )
        former.save()
    claim = ParentageClaim.objects.create(says=says, ground=ground, by=by, **subject, **fields)
    for order, parent in enumerate(parents):
        part = "" if egg_parent is None else ("egg" if order + 1 == egg_parent else "sperm")
        ClaimParent.objects.create(
            claim=claim,
            order=order,
            specimen=parent.specimen,
            name=parent.name,
            words=parent.words,
            part=part,
        )
    announce("claims", [claim.pk])
    return claim
