"""Giving a plant, or pieces of it, into other hands — the giver tells first — and the receiver's answer."""

from __future__ import annotations

from dataclasses import dataclass

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import Keeper, Meeting, User
from specimens.changes import announce
from specimens.models import Division, HandOver, Specimen
from specimens.models import State as PlantState
from specimens.naming.dates import PartialDate
from specimens.services.handover_matching import (
    Evening,
    circle_of,
    claims_recognised,
    keeper_meant,
    rival_claim,
)
from specimens.services.handover_steps import (
    AnsweredAlreadyError,
    HandOverError,
    answer,
    hand_on,
    lock_hand_over,
    lock_plant,
    record_piece,
    set_parent,
)
from specimens.services.identifications import NO_DATE
from specimens.services.specimens import end_specimen

State, What = HandOver.State, HandOver.What

MOST_PIECES = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Gift:
    """What is handed over, when and where. Of a whole plant there is one."""

    plant: Specimen
    what: str = What.PIECE
    kind: str = Division.Kind.PUP
    count: int = 1
    label_text: str = ""
    on: PartialDate = NO_DATE
    meeting: Meeting | None = None

    def __post_init__(self) -> None:
        if not 1 <= self.count <= MOST_PIECES:
            raise ValueError(f"Between 1 and {MOST_PIECES} at a time.")
        if self.what == What.PLANT and self.count != 1:
            raise ValueError("A whole plant is given once.")


@transaction.atomic
def offer(*, gift: Gift, by: User, receiver: Keeper | None = None, words: str = "") -> list[HandOver]:
    """The giver tells: each piece waits for its receiver, unless the receiver has logged it already.

    A receiver in `words` alone is found where exactly one keeper bears that name, and the giver is not told
    whether. Raises HandOverError.
    """
    giver = _giver(gift)
    receiver = receiver or keeper_meant(words)
    if receiver is None and not words.strip():
        raise HandOverError("To whom did it go?")
    if receiver is not None and receiver.pk in circle_of(giver):
        raise HandOverError("It is with them already.")
    joined = _join_claims(gift, giver=giver, receiver=receiver, by=by)
    rest = gift.count - len(joined)
    told = [
        _tell(gift, giver=giver, by=by, receiver=receiver, receiver_words=words.strip()) for _ in range(rest)
    ]
    for each in told:
        _point_out_rival(each)
    announce("keepings", [gift.plant.pk])
    return joined + told


@transaction.atomic
def put_on_table(*, gift: Gift, by: User) -> list[HandOver]:
    """The giver puts them on the table of the gift's meeting, for whoever picks them. Raises HandOverError."""
    if gift.meeting is None:
        raise HandOverError("Which meeting’s table?")
    giver = _giver(gift)
    told = [_tell(gift, giver=giver, by=by, on_table=True) for _ in range(gift.count)]
    announce("keepings", [gift.plant.pk])
    return told


@transaction.atomic
def give_outside(*, gift: Gift, by: User, words: str) -> list[HandOver]:
    """To somebody outside the society, whom nobody can ask: agreed at once; a whole plant has left."""
    giver = _giver(gift)
    if not words.strip():
        raise HandOverError("To whom did it go?")
    told = [
        _tell(gift, giver=giver, by=by, state=State.AGREED, receiver_words=words.strip())
        for _ in range(gift.count)
    ]
    if gift.what == What.PLANT:
        plant = lock_plant(gift.plant)
        # The words may name somebody; the reason is read by everybody.
        end_specimen(plant, version=plant.version, state=PlantState.LEFT, on=gift.on, reason="given away")
    announce("keepings", [gift.plant.pk])
    return told


@transaction.atomic
def accept(
    hand_over: HandOver, *, by: User, keeper: Keeper | None = None, logged: Specimen | None = None
) -> HandOver:
    """The receiver has it: a piece gets its record, or is the plant they `logged`; a whole plant changes hands.

    `keeper` keeps it, else whom it was offered to. The same person accepting twice gets the first answer.
    Raises AnsweredAlreadyError where somebody was quicker; HandOverError where the plant is no longer the
    giver's; and whatever the refresher finds wrong with its descent.
    """
    try:
        fresh = lock_hand_over(hand_over, State.OFFERED)
    except AnsweredAlreadyError as told:
        if told.now.state == State.AGREED and told.now.answered_by_id == by.pk:
            return told.now
        raise
    receiver = keeper or fresh.receiver
    if receiver is None:
        raise HandOverError("Who keeps it now?")
    if receiver.pk in circle_of(fresh.giver):
        raise HandOverError("It is yours already. Take it back instead.")
    fresh.receiver = receiver
    if fresh.is_piece:
        fresh.piece = _joined(fresh, logged) if logged else record_piece(fresh, keeper=receiver, by=by)
    else:
        hand_on(fresh)
    answer(fresh, State.AGREED, by=by)
    announce("keepings", [fresh.plant_id])
    return fresh


@transaction.atomic
def refuse(hand_over: HandOver, *, by: User) -> HandOver:
    """The receiver never got it. Raises AnsweredAlreadyError."""
    fresh = answer(lock_hand_over(hand_over, State.OFFERED), State.REFUSED, by=by)
    announce("keepings", [fresh.plant_id])
    return fresh


@transaction.atomic
def withdraw(hand_over: HandOver, *, by: User) -> HandOver:
    """The giver takes back what they told, while it waits. Raises AnsweredAlreadyError."""
    fresh = answer(lock_hand_over(hand_over, State.OFFERED), State.WITHDRAWN, by=by)
    announce("keepings", [fresh.plant_id])
    return fresh


def _giver(gift: Gift) -> Keeper:
    """Who keeps the plant now, under lock. Raises HandOverError where it cannot be given."""
    plant = lock_plant(gift.plant)
    giver = plant.keeper
    if giver is None:
        raise HandOverError("Nobody keeps this plant, so nobody can give it away.")
    if gift.what == What.PLANT and HandOver.objects.open().filter(plant=plant, what=What.PLANT).exists():
        raise HandOverError("It is being handed over already. Take that back first.")
    return giver


def _tell(gift: Gift, *, giver: Keeper, by: User, state: str = State.OFFERED, **fields: object) -> HandOver:
    return HandOver.objects.create(
        state=state,
        giver=giver,
        told_by=by,
        plant=gift.plant,
        what=gift.what,
        kind=gift.kind,
        label_text=gift.label_text,
        handed=gift.on,
        meeting=gift.meeting,
        **fields,
    )


def _join_claims(gift: Gift, *, giver: Keeper, receiver: Keeper | None, by: User) -> list[HandOver]:
    """What the receiver logged before: the giver has just said that it is right."""
    if gift.what != What.PIECE or receiver is None:
        return []
    evening = Evening(gift.on, gift.meeting, timezone.now().date())
    found = claims_recognised(gift.plant, giver=giver, receiver=receiver, evening=evening)
    return [answer(claim, State.AGREED, by=by) for claim in found[: gift.count]]


def _point_out_rival(told: HandOver) -> None:
    """Both sides and the curator are shown that the receiver logged a piece of another plant."""
    claim = rival_claim(told) if told.is_piece else None
    if claim is not None:
        claim.rival, claim.to_settle = told, True
        claim.save()


def _joined(hand_over: HandOver, logged: Specimen) -> Specimen:
    """The plant that the receiver logged, now a piece of the giver's; what they claimed of it is taken back."""
    for claim in logged.came_by.select_for_update(of=("self",)).filter(state=State.CLAIMED):
        answer(claim, State.WITHDRAWN, by=hand_over.told_by)
    if logged.division is not None and logged.division.parent_id == hand_over.plant_id:
        return logged
    return set_parent(logged, parent=hand_over.plant, kind=hand_over.kind)
