"""The curator answers a member's view of what a plant is."""

from __future__ import annotations

from django.db import transaction

from frondkeep.society.models import User
from specimens.models import Identification
from specimens.services.identifications import identify


class AnsweredAlreadyError(Exception):
    """Somebody answered this proposal a moment ago."""


@transaction.atomic
def accept_proposal(proposal: Identification, *, by: User) -> Identification:
    """The proposed name becomes what the plant is thought to be, said by the curator. Raises AnsweredAlreadyError."""
    waiting = close_proposal(proposal)
    return identify(
        waiting.specimen,
        name=waiting.name,
        by=by,
        ground=waiting.ground,
        qualifier=waiting.qualifier,
        on=waiting.on,
        treatment=waiting.treatment,
        remarks=waiting.remarks,
    )


@transaction.atomic
def decline_proposal(proposal: Identification) -> Identification:
    """The plant keeps its name; the proposal stays on record. Raises AnsweredAlreadyError."""
    return close_proposal(proposal)


def close_proposal(proposal: Identification) -> Identification:
    # Locked, so that two curators who answer at one moment do not both answer.
    waiting = (
        Identification.objects.select_for_update(of=("self",))
        .select_related("specimen", "name", "treatment")
        .get(pk=proposal.pk)
    )
    if waiting.standing != Identification.Standing.PROPOSED:
        raise AnsweredAlreadyError
    waiting.standing = Identification.Standing.EARLIER
    waiting.save()
    return waiting
