"""Hand-overs, told with as little as a test must say."""

from __future__ import annotations

from typing import Any

from frondkeep.society.models import Member
from specimens.models import HandOver, Specimen
from specimens.services.handover_claims import claim_piece
from specimens.services.handovers import Gift, offer, put_on_table
from tests.cast import make_meeting, make_pup


def make_offer(plant: Specimen, giver: Member, to: Member | str, **gift: Any) -> HandOver:
    """The giver says that a piece went to a keeper, or to somebody in words."""
    whom = {"words": to} if isinstance(to, str) else {"receiver": to.keeper}
    return offer(gift=Gift(plant=plant, **gift), by=giver.user, **whom)[0]


def make_whole_offer(plant: Specimen, giver: Member, to: Member | str, **gift: Any) -> HandOver:
    return make_offer(plant, giver, to, what="plant", **gift)


def make_claim(plant: Specimen, receiver: Member, **fields: Any) -> HandOver | None:
    """The receiver logs a piece of the plant."""
    return claim_piece(make_pup(plant, receiver, **fields), by=receiver.user)


def on_the_table(plant: Specimen, giver: Member, count: int = 1) -> list[HandOver]:
    return put_on_table(gift=Gift(plant=plant, count=count, meeting=make_meeting()), by=giver.user)
