"""Recognising one hand-over in what two people told of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from django.db.models import Q, QuerySet

from frondkeep.society.models import Keeper, Meeting
from specimens.models import HandOver, Specimen
from specimens.models.handovers import ON_TABLE
from specimens.naming.dates import PartialDate

State, What = HandOver.State, HandOver.What

# People remember an evening by the month rather than by the day.
CLOSE = timedelta(days=31)


def circle_of(keeper: Keeper) -> frozenset[int]:
    """Ids of the keepers that are the same people: a member, their household, its other members."""
    household = keeper.household_id or (keeper.member.household_id if keeper.member else None)
    if household is None:
        return frozenset([keeper.pk])
    same = Keeper.objects.filter(Q(household=household) | Q(member__household=household))
    return frozenset(same.values_list("pk", flat=True)) | {keeper.pk}


def keeper_meant(words: str) -> Keeper | None:
    """The one keeper of this very name, whether or not they appear by name; None for two, or none.

    Never tell the asker what was found: they may not know who is a member.
    """
    named = Q(member__name__iexact=words.strip()) | Q(household__name__iexact=words.strip())
    found = list(Keeper.objects.with_people().filter(named)[:2]) if words.strip() else []
    return found[0] if len(found) == 1 else None


@dataclass(frozen=True, slots=True)
class Evening:
    """When and where something was handed over, as one side tells it; `told` is the day it was told."""

    when: PartialDate
    meeting: Meeting | None
    told: date

    @property
    def days(self) -> tuple[date, date]:
        """The days it may have been: the date's, else the meeting's, else the day it was told."""
        other = self.meeting.date if self.meeting else self.told
        return (
            self.when.earliest or self.when.latest or other,
            self.when.latest or self.when.earliest or other,
        )

    def may_be(self, other: Evening) -> bool:
        """Whether it may be the same evening: one meeting, or days within a month of each other."""
        if self.meeting and other.meeting:
            return self.meeting.pk == other.meeting.pk
        (first, last), (earliest, latest) = self.days, other.days
        return first - CLOSE <= latest and earliest <= last + CLOSE


def evening_of(hand_over: HandOver) -> Evening:
    return Evening(hand_over.handed, hand_over.meeting, hand_over.told_at.date())


def _of_pieces(state: str, *, giver: Keeper) -> QuerySet[HandOver]:
    """Under lock: what is found here is answered next."""
    told = HandOver.objects.select_for_update(of=("self",)).select_related("meeting", "giver", "plant")
    return told.filter(what=What.PIECE, state=state, giver__in=circle_of(giver)).order_by("pk")


def offer_recognised(
    plant: Specimen, *, giver: Keeper, receiver: Keeper, evening: Evening
) -> HandOver | None:
    """What the giver told of this piece before its receiver logged it: said to be for them, else on the
    table of the same meeting. The oldest first."""
    offers = _of_pieces(State.OFFERED, giver=giver).filter(plant=plant)
    for_them = offers.filter(receiver__in=circle_of(receiver))
    on_table = offers.filter(ON_TABLE, meeting=evening.meeting) if evening.meeting else ()
    return next((each for each in (*for_them, *on_table) if evening.may_be(evening_of(each))), None)


def claims_recognised(
    plant: Specimen, *, giver: Keeper, receiver: Keeper, evening: Evening
) -> list[HandOver]:
    """What the receiver logged of this plant before the giver told; the oldest first."""
    claims = _of_pieces(State.CLAIMED, giver=giver).filter(plant=plant, receiver__in=circle_of(receiver))
    return [each for each in claims if evening.may_be(evening_of(each))]


def rival_offer(claim: HandOver) -> HandOver | None:
    """What the giver told of another plant's piece for the same receiver at that time."""
    return _close_to(claim, _of_pieces(State.OFFERED, giver=claim.giver))


def rival_claim(offer: HandOver) -> HandOver | None:
    """What the receiver logged of another plant of the giver's at that time, and nobody disputes yet."""
    return _close_to(offer, _of_pieces(State.CLAIMED, giver=offer.giver).filter(rival=None))


def _close_to(told: HandOver, others: QuerySet[HandOver]) -> HandOver | None:
    if told.receiver is None:
        return None
    of_others = others.exclude(plant=told.plant).filter(receiver__in=circle_of(told.receiver))
    return next((each for each in of_others if evening_of(told).may_be(evening_of(each))), None)
