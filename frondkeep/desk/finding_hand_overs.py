"""Finding a hand-over, if it is this user's to see or to answer. What is not, is not there.

The state is not looked at: whoever answers what was answered a moment ago is told so.
"""

from __future__ import annotations

import uuid
from datetime import timedelta

from django.db.models import Q, QuerySet
from django.http import Http404

from frondkeep.society.models import Meeting, User
from specimens.models import Came, HandOver, Specimen
from specimens.models.handovers import ON_TABLE
from specimens.services.handover_matching import circle_of

MOST_LOGGED = 6
LOGGED_OF_LATE = timedelta(days=120)


def visible_hand_over(user: User, token: uuid.UUID) -> HandOver:
    """For whoever gave or received it, and the curator."""
    return _one(HandOver.objects.visible_to(user), token)


def offered_to(user: User, token: uuid.UUID) -> HandOver:
    """One to be answered by its receiver; the curator answers for anybody."""
    found = (
        HandOver.objects.all() if user.is_curator else HandOver.objects.filter(receiver__in=user.keeper_ids)
    )
    return _one(found, token)


def given_by(user: User, token: uuid.UUID) -> HandOver:
    """One to be answered or taken back by its giver; the curator does so for anybody."""
    found = HandOver.objects.all() if user.is_curator else HandOver.objects.filter(giver__in=user.keeper_ids)
    return _one(found, token)


def from_a_table(token: uuid.UUID) -> HandOver:
    """One that lies on a table or lay there: everybody may reach for it."""
    return _one(HandOver.objects.filter(on_table=True), token)


def curators_hand_over(user: User, token: uuid.UUID) -> HandOver:
    if not user.is_curator:
        raise Http404
    return _one(HandOver.objects.all(), token)


def _one(found: QuerySet[HandOver], token: uuid.UUID) -> HandOver:
    hand_over = found.with_page_parts().filter(token=token).first()
    if hand_over is None:
        raise Http404
    return hand_over


def listed_for(user: User, *, everybodys: bool = False) -> QuerySet[HandOver]:
    """A user's own hand-overs and what they are asked; a curator may ask for everybody's."""
    if everybodys and user.is_curator:
        return HandOver.objects.all()
    mine = Q(giver__in=user.keeper_ids) | Q(receiver__in=user.keeper_ids)
    return HandOver.objects.filter(mine | Q(to_settle=True) if user.is_curator else mine)


def table_of(pk: int) -> Meeting:
    """A meeting that has a table: something was put there once. Http404 for any other."""
    found = Meeting.objects.filter(pk=pk, pk__in=HandOver.objects.filter(on_table=True).values("meeting"))
    meeting = found.first()
    if meeting is None:
        raise Http404
    return meeting


def tables_laid() -> QuerySet[Meeting]:
    """Meetings on whose table something lies, the newest first."""
    lying = HandOver.objects.filter(ON_TABLE, state=HandOver.State.OFFERED)
    return Meeting.objects.filter(pk__in=lying.values("meeting"))


def logged_already(hand_over: HandOver, user: User) -> list[Specimen]:
    """Plants of the user that may be the piece offered: logged of late, from its giver or from nobody, of no
    plant on record; and what they say is a piece of another plant of the giver's. The newest first."""
    disputed = Q(came_by__rival=hand_over)
    since = hand_over.told_at - LOGGED_OF_LATE
    loose = Q(
        Q(from_keeper__in=circle_of(hand_over.giver)) | Q(from_keeper=None, from_words=""),
        division__parent=None,
        came__in=[Came.PIECE, Came.OUTSIDE, Came.NOT_KNOWN],
        logged_at__gte=since,
    ) & ~Q(came_by__state=HandOver.State.AGREED)
    mine = Specimen.objects.mine(user).standing().exclude(pk=hand_over.plant_id)
    return list(mine.filter(disputed | loose).distinct().with_page_parts().newest_first()[:MOST_LOGGED])
