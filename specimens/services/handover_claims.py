"""The receiver tells first, by logging a plant that came from another's; the giver's answer, and what the
curator settles."""

from __future__ import annotations

from django.db import transaction
from django.utils import timezone

from frondkeep.society.models import Keeper, User
from specimens.changes import announce
from specimens.models import HandOver, Specimen
from specimens.services.handover_matching import Evening, circle_of, offer_recognised, rival_offer
from specimens.services.handover_steps import (
    AnsweredAlreadyError,
    answer,
    lock_hand_over,
    lock_plant,
    set_parent,
)

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
def agree(claim: HandOver, *, by: User) -> HandOver:
    """It is right, says the giver (or the curator, of one that the giver denied). What the giver told otherwise
    of the same piece is taken back. Raises AnsweredAlreadyError."""
    denied = [State.REFUSED] if by.is_curator and claim.to_settle else []
    fresh = lock_hand_over(claim, State.CLAIMED, *denied)
    rival = fresh.rival
    answer(fresh, State.AGREED, by=by)
    if rival is not None and rival.state == State.OFFERED:
        answer(rival, State.WITHDRAWN, by=by)
    piece = _piece_of(fresh)
    if piece.division is None or piece.division.parent_id != fresh.plant_id:
        set_parent(piece, parent=fresh.plant, kind=fresh.kind)
    announce("keepings", [piece.pk])
    return fresh


@transaction.atomic
def deny(claim: HandOver, *, by: User) -> HandOver:
    """Not a piece of mine, says the giver: the record stays, with words in place of the link, and the curator
    is asked. Raises AnsweredAlreadyError."""
    fresh = answer(lock_hand_over(claim, State.CLAIMED), State.REFUSED, by=by)
    fresh.to_settle = True
    fresh.save()
    piece = _piece_of(fresh)
    if piece.division is not None and piece.division.parent_id == fresh.plant_id:
        set_parent(piece, parent=None, words=QUESTIONED)
    announce("keepings", [piece.pk])
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
