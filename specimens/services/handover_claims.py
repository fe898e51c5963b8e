"""The receiver tells first, by logging a plant that came from another's; the giver's answer, and what the
curator settles."""

from __future__ import annotations

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import Keeper, Meeting, User
from specimens.changes import announce
from specimens.models import HandOver, Specimen
from specimens.naming.dates import PartialDate
from specimens.services.handover_matching import Evening, circle_of, offer_recognised, rival_offer
from specimens.services.handover_steps import (
    AnsweredAlreadyError,
    HandOverError,
    answer,
    hand_on,
    lock_hand_over,
    lock_plant,
    set_parent,
)
from specimens.services.handovers import accept
from specimens.services.identifications import NO_DATE

State, What = HandOver.State, HandOver.What

QUESTIONED = "a plant whose keeper knows of no such piece"


@transaction.atomic
def claim_piece(piece: Specimen, *, by: User | None) -> HandOver | None:
    """Ask the giver about a piece that was just logged, or recognise it in what they told before.

    None where nobody is to be asked: no parent on record, a piece of one's own plant, or a giver in words.
    The giver's silence blocks nothing: the record stands.
    """
    division = piece.division
    parent = division.parent if division else None
    receiver = piece.keeper
    giver = _giver_of(piece, parent)
    if (
        division is None
        or parent is None
        or receiver is None
        or giver is None
        or receiver.pk in circle_of(giver)
    ):
        return None
    lock_plant(parent)
    evening = Evening(piece.acquired, piece.meeting, timezone.now().date())
    told = offer_recognised(parent, giver=giver, receiver=receiver, evening=evening)
    if told is not None:
        told.receiver, told.piece = receiver, piece
        answer(told, State.AGREED, by=by)
    elif by is not None and by.acts_for(giver):
        return None
    else:
        told = _claim(piece, parent=parent, giver=giver, receiver=receiver, by=by)
    announce("keepings", [piece.pk])
    return told


@transaction.atomic
def claim_plant(
    plant: Specimen, *, receiver: Keeper, by: User, on: PartialDate = NO_DATE, meeting: Meeting | None = None
) -> HandOver:
    """Somebody says that a whole plant is with them now: its keeper is asked, unless they told so already.

    Raises HandOverError where nobody can have given it to them.
    """
    fresh = lock_plant(plant)
    giver = fresh.keeper
    if giver is None or not fresh.is_growing:
        raise HandOverError("Nobody keeps this plant, so nobody can have given it to you. Ask the curator.")
    if receiver.pk in circle_of(giver):
        raise HandOverError("It is yours already.")
    told = HandOver.objects.open().filter(plant=fresh, what=What.PLANT).first()
    if told is not None:
        if told.state == State.OFFERED and (told.lies_on_table or told.receiver_id in circle_of(receiver)):
            return accept(told, by=by, keeper=receiver)
        raise HandOverError("Its keeper is being asked about it already. Ask them, or the curator.")
    claim = HandOver.objects.create(
        what=What.PLANT,
        state=State.CLAIMED,
        plant=fresh,
        giver=giver,
        receiver=receiver,
        meeting=meeting,
        handed=on,
        told_by=by,
    )
    announce("keepings", [fresh.pk])
    return claim


@transaction.atomic
def agree(claim: HandOver, *, by: User) -> HandOver:
    """It is right, says the giver (or the curator, of one that the giver denied). What the giver told otherwise
    of the same piece is taken back. Raises AnsweredAlreadyError; HandOverError where a whole plant is no longer
    the giver's."""
    denied = [State.REFUSED] if by.is_curator and claim.to_settle else []
    fresh = lock_hand_over(claim, State.CLAIMED, *denied)
    rival = fresh.rival
    answer(fresh, State.AGREED, by=by)
    if rival is not None and rival.state == State.OFFERED:
        answer(rival, State.WITHDRAWN, by=by)
    if not fresh.is_piece:
        hand_on(fresh)
    elif not _is_linked(fresh):
        set_parent(_piece_of(fresh), parent=fresh.plant, kind=fresh.kind)
    announce("keepings", [fresh.plant_id])
    return fresh


@transaction.atomic
def deny(claim: HandOver, *, by: User) -> HandOver:
    """Not so, says the giver: the record of a piece stays, with words in place of the link; a whole plant stays
    where it is; and the curator is asked. Raises AnsweredAlreadyError."""
    fresh = answer(lock_hand_over(claim, State.CLAIMED), State.REFUSED, by=by)
    fresh.to_settle = True
    fresh.save()
    if fresh.is_piece and _is_linked(fresh):
        set_parent(_piece_of(fresh), parent=None, words=QUESTIONED)
    announce("keepings", [fresh.plant_id])
    return fresh


@transaction.atomic
def keep_apart(claim: HandOver, *, by: User) -> HandOver:
    """They are two pieces: what the giver told and what the receiver logged are answered each for itself."""
    fresh = lock_hand_over(claim, State.CLAIMED)
    fresh.rival, fresh.to_settle = None, False
    fresh.save()
    announce("keepings", [fresh.plant_id])
    return fresh


@transaction.atomic
def leave_denied(claim: HandOver, *, by: User) -> HandOver:
    """The curator lets the giver's denial stand: the piece stays a piece of a plant in words."""
    fresh = lock_hand_over(claim, State.REFUSED)
    if not fresh.to_settle:
        raise AnsweredAlreadyError(fresh)
    answer(fresh, State.REFUSED, by=by)
    announce("keepings", [fresh.plant_id])
    return fresh


def _giver_of(piece: Specimen, parent: Specimen | None) -> Keeper | None:
    """From whom it came, else whoever keeps its parent; nobody where it came from somebody in words."""
    if piece.from_keeper is not None:
        return piece.from_keeper
    return parent.keeper if parent is not None and not piece.from_words else None


def _claim(
    piece: Specimen, *, parent: Specimen, giver: Keeper, receiver: Keeper, by: User | None
) -> HandOver:
    claim = HandOver(
        what=What.PIECE,
        state=State.CLAIMED,
        plant=parent,
        piece=piece,
        kind=piece.division.kind if piece.division else "",
        label_text=piece.label_text,
        giver=giver,
        receiver=receiver,
        meeting=piece.meeting,
        handed=piece.acquired,
        told_by=by,
    )
    claim.rival = rival_offer(claim)
    claim.to_settle = claim.rival is not None
    claim.save()
    return claim


def _piece_of(claim: HandOver) -> Specimen:
    if claim.piece is None:
        raise ValueError("A claim is about a piece on record.")
    return claim.piece


def _is_linked(claim: HandOver) -> bool:
    division = _piece_of(claim).division
    return division is not None and division.parent_id == claim.plant_id
