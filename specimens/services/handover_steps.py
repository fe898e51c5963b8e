"""The steps that every hand-over is made of: looking at it under lock, answering it, and moving what it is about."""

from __future__ import annotations

from django.db import transaction
from django.db.models import Q
from django.utils import timezone

from frondkeep.society.models import Keeper, User
from specimens.changes import announce
from specimens.models import Came, Division, HandOver, Identification, Specimen
from specimens.naming.dates import PartialDate
from specimens.services.specimens import PieceOf, change_keeper, divide, log_specimen

State = HandOver.State


class HandOverError(ValueError):
    """This cannot be handed over; `str()` says why, in words for whoever asked."""


class AnsweredAlreadyError(Exception):
    """Somebody was quicker; `now` is the hand-over as it stands."""

    def __init__(self, now: HandOver) -> None:
        self.now = now
        super().__init__(f"This was answered a moment ago: {now.get_state_display()}.")


def lock_plant(plant: Specimen) -> Specimen:
    """The plant fresh and locked until commit, so that of giver and receiver who tell of one piece at one
    moment the second finds what the first told; and so that nobody gives a plant that has just gone."""
    return Specimen.objects.select_for_update(of=("self",)).get(pk=plant.pk)


def lock_hand_over(hand_over: HandOver, *states: str) -> HandOver:
    """The hand-over fresh and locked, if it is in one of these states; else AnsweredAlreadyError.

    The lock stops two who answer at one moment. The plant is locked first, here as everywhere: two that lock
    in opposite orders would wait for each other.
    """
    lock_plant(hand_over.plant)
    # With its rivals, in one order: the answer to one of them answers the other.
    together = Q(pk=hand_over.pk) | Q(rival=hand_over.pk) | Q(pk=hand_over.rival_id)
    rows = HandOver.objects.select_for_update(of=("self",)).filter(together).order_by("pk")
    fresh = next(
        row
        for row in rows.select_related("plant__identification__name", "giver", "meeting")
        if row.pk == hand_over.pk
    )
    if fresh.state not in states:
        raise AnsweredAlreadyError(fresh)
    return fresh


def answer(hand_over: HandOver, state: str, *, by: User | None) -> HandOver:
    """Write down the answer; whoever told otherwise of the same piece is no rival of it any more."""
    hand_over.state, hand_over.answered_by, hand_over.answered_at = state, by, timezone.now()
    hand_over.to_settle, hand_over.rival = False, None
    hand_over.save()
    for claim in hand_over.rivals.filter(state=State.CLAIMED):
        claim.rival, claim.to_settle = None, False
        claim.save()
    return hand_over


def move_plant(plant: Specimen, *, to: Keeper, on: PartialDate) -> None:
    """The whole plant goes into other hands, without what is its former keeper's own affair."""
    fresh = lock_plant(plant)
    fresh.growing_place = fresh.own_number = fresh.now_with = ""
    fresh.version += 1
    fresh.save()
    change_keeper(fresh, keeper=to, on=on)


def hand_on(hand_over: HandOver) -> None:
    """The whole plant goes to its receiver. Raises HandOverError where it is no longer the giver's."""
    plant, receiver = hand_over.plant, hand_over.receiver
    if receiver is None or not plant.is_growing or plant.keeper != hand_over.giver:
        raise HandOverError("The giver does not keep this plant any longer.")
    move_plant(plant, to=receiver, on=hand_over.handed)


def record_piece(hand_over: HandOver, *, keeper: Keeper, by: User | None) -> Specimen:
    """The receiver's record of a piece, under its parent's name until somebody thinks otherwise."""
    plant = hand_over.plant
    thought = plant.identification
    return log_specimen(
        keeper=keeper,
        came=Came.PIECE,
        by=by,
        label_text=hand_over.label_text or plant.label_text,
        acquired=hand_over.handed,
        meeting=hand_over.meeting,
        name=thought.name if thought else None,
        qualifier=thought.qualifier if thought else "",
        ground=thought.ground if thought else Identification.Ground.LABEL,
        piece_of=PieceOf(parent=plant, kind=hand_over.kind, by=hand_over.giver.member),
        holds=plant.holds,
        seen_by=plant.seen_by,
        from_keeper=hand_over.giver,
    )


@transaction.atomic
def set_parent(piece: Specimen, *, parent: Specimen | None, kind: str = "", words: str = "") -> Specimen:
    """Let a plant be a piece of this one, or of one in words. What stood before is voided, and stays in the
    history. Raises whatever the refresher finds wrong with its descent."""
    fresh = lock_plant(piece)
    former = fresh.division
    fresh.came, fresh.sowing = Came.PIECE, None
    fresh.division = divide(
        PieceOf(
            parent=parent,
            words=words,
            kind=former.kind if former else kind or Division.Kind.NOT_KNOWN,
            sport=former.sport if former else False,
            sport_words=former.sport_words if former else "",
            by=former.by if former else None,
        ),
        taken=former.taken if former else fresh.acquired,
    )
    fresh.version += 1
    fresh.save()
    if former is not None and not former.specimens.exists():
        former.voided_reason = "The hand-over of the piece was answered otherwise."
        former.save()
    announce("specimens", [fresh.pk])
    return fresh
