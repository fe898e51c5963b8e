"""Answering a hand-over: one address, one answer. Whoever comes too late is told how it stands."""

from __future__ import annotations

import uuid
from collections.abc import Callable

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect
from django.views.decorators.http import require_POST

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding_hand_overs import (
    curators_hand_over,
    from_a_table,
    given_by,
    offered_to,
    visible_hand_over,
)
from frondkeep.desk.forms.keepers import keepers_at_hand
from frondkeep.desk.views.handovers import hand_over_page, table_page, taken_form
from frondkeep.society.keys import key_asked
from lineage.services.descent import DescentError
from specimens.models import HandOver
from specimens.services.handover_claims import agree, deny, keep_apart, leave_denied
from specimens.services.handover_steps import AnsweredAlreadyError, HandOverError
from specimens.services.handovers import accept, refuse, withdraw

PERHAPS_LOGGED = (
    "You logged a plant of late that may be this one. Say which it is, so that it is not kept twice."
)


@require_POST
def accept_offer(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = offered_to(request.user, token)
    chosen = {}
    if found.state == HandOver.State.OFFERED:
        form = taken_form(request.user, found, request.POST)
        if not form.is_valid():
            return hand_over_page(request, found, form=form, status=422)
        if "logged" in form.fields and "logged" not in request.POST:
            return hand_over_page(request, found, form=form, trouble=PERHAPS_LOGGED, status=422)
        chosen = {"keeper": form.cleaned_data["keeper"], "logged": form.cleaned_data["logged"]}
    return answered(request, found, lambda: accept(found, by=request.user, **chosen), code_words)


@require_POST
def pick(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    """Somebody took it from the table, for one of the keepers they act for."""
    found = from_a_table(token)
    asked = key_asked(request.POST.get("keeper", ""))
    keepers = keepers_at_hand(request.user)
    keeper = next((each for each in keepers if asked in (None, each.pk)), None)
    if keeper is None:
        return table_trouble(request, found, "You keep no plants here, so it cannot be yours.", 422)
    return answered(request, found, lambda: accept(found, by=request.user, keeper=keeper), code_words)


@require_POST
def refuse_offer(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = offered_to(request.user, token)
    return answered(request, found, lambda: refuse(found, by=request.user), "Kept: it is not yours.")


@require_POST
def take_back(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = given_by(request.user, token)
    return answered(request, found, lambda: withdraw(found, by=request.user), "Taken back.")


@require_POST
def agree_to_claim(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = given_by(request.user, token)
    return answered(request, found, lambda: agree(found, by=request.user), "Kept: both agree.")


@require_POST
def deny_claim(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = given_by(request.user, token)
    said = "Kept. What they recorded of their own stays; the curator is asked."
    return answered(request, found, lambda: deny(found, by=request.user), said)


@require_POST
def two_pieces(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = visible_hand_over(request.user, token)
    said = "Kept: two pieces, each with an answer of its own."
    return answered(request, found, lambda: keep_apart(found, by=request.user), said)


@require_POST
def leave_in_words(request: HttpRequest, token: uuid.UUID) -> HttpResponse:
    found = curators_hand_over(request.user, token)
    return answered(
        request, found, lambda: leave_denied(found, by=request.user), "Settled: it stays as it is."
    )


def answered(
    request: HttpRequest,
    found: HandOver,
    write: Callable[[], HandOver],
    said: str | Callable[[HandOver], str],
) -> HttpResponse:
    """Write the answer and go on to the list; or say on its page, or its table, why it was not taken."""
    try:
        now = write()
    except AnsweredAlreadyError as late:
        return trouble(request, late.now, str(late), 409)
    except (HandOverError, DescentError) as problem:
        return trouble(request, found, str(problem), 422)
    say_saved(request, said if isinstance(said, str) else said(now), now.handed)
    return redirect("hand-overs")


def trouble(request: HttpRequest, found: HandOver, words: str, status: int) -> HttpResponse:
    try:
        own = visible_hand_over(request.user, found.token)
    except Http404:
        return table_trouble(request, found, "Somebody was quicker, and has taken this one.", status)
    return hand_over_page(request, own, trouble=words, status=status)


def table_trouble(request: HttpRequest, found: HandOver, words: str, status: int) -> HttpResponse:
    if found.meeting_id is None:
        raise Http404
    return table_page(request, found.meeting_id, trouble=words, status=status)


def code_words(now: HandOver) -> str:
    """What to write on the tag."""
    if now.piece is not None:
        return f"Yours: {now.piece.code}. Write it on the tag."
    return f"Yours: {now.plant.code}."
