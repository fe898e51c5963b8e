"""Gave away: a plant, or pieces of it, to a member, onto a meeting's table, or outside the society.

And got: a whole plant that is on record with somebody else.
"""

from __future__ import annotations

from typing import Any

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding import editable_plant, visible_plant
from frondkeep.desk.forms.handovers import OUTSIDE, TABLE, GaveForm, GotForm
from frondkeep.desk.forms.keepers import keepers_at_hand
from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once
from specimens.models import HandOver, Specimen
from specimens.services.handover_claims import claim_plant
from specimens.services.handover_steps import HandOverError
from specimens.services.handovers import give_outside, offer, put_on_table


@require_http_methods(["GET", "HEAD", "POST"])
def gave(request: HttpRequest, code: str) -> HttpResponse:
    plant = editable_plant(request.user, code)
    form = GaveForm(request.POST or None, user=request.user, plant=plant)
    if form.is_valid():
        try:
            tokens = write_gift(form, request.user)
        except HandOverError as problem:
            form.add_error("receiver_text", str(problem))
        else:
            say_saved(request, what_now(form, tokens), form.cleaned_data["on"])
            return redirect("hand-overs")
    status = 422 if form.is_bound else 200
    return render(request, "desk/handover_gave.html", {"form": form, "plant": plant}, status=status)


def write_gift(form: GaveForm, user: User) -> list[str]:
    """The tokens of what was told; a form sent twice gives the first ones."""
    typed: dict[str, Any] = form.cleaned_data
    gift, words = typed["gift"], typed["receiver_text"]

    def write() -> list[str]:
        if typed["way"] == TABLE:
            made = put_on_table(gift=gift, by=user)
        elif typed["way"] == OUTSIDE:
            made = give_outside(gift=gift, by=user, words=words)
        else:
            made = offer(gift=gift, by=user, receiver=typed["receiver"], words=words)
        return [str(each.token) for each in made]

    purpose = f"gave {form.plant.pk}"
    return take_once(token=typed["submission"], user=user, purpose=purpose, write=write)


def what_now(form: GaveForm, tokens: list[str]) -> str:
    way = form.cleaned_data["way"]
    if way == TABLE:
        return f"Put on the table: {len(tokens)}. Whoever picks it says so."
    if way == OUTSIDE:
        return "Kept. Nobody needs to answer."
    agreed = HandOver.objects.filter(token__in=tokens, state=HandOver.State.AGREED).count()
    waits = "It waits for their answer." if agreed < len(tokens) else ""
    known = "They had logged it already; the two are joined." if agreed else ""
    return " ".join(part for part in ("Kept.", known, waits) if part)


@require_http_methods(["GET", "HEAD", "POST"])
def got(request: HttpRequest, code: str) -> HttpResponse:
    """Somebody says that this plant is with them now; its keeper is asked."""
    plant = visible_plant(request.user, code)
    form = GotForm(request.POST or None, user=request.user, keepers=keepers_at_hand(request.user))
    if form.is_valid():
        try:
            write_claim(form, plant, request.user)
        except HandOverError as problem:
            form.add_error(None, str(problem))
        else:
            say_saved(request, "Kept. Its keeper on record is asked.", form.cleaned_data["on"])
            return redirect("hand-overs")
    status = 422 if form.is_bound else 200
    return render(request, "desk/handover_got.html", {"form": form, "plant": plant}, status=status)


def write_claim(form: GotForm, plant: Specimen, user: User) -> None:
    typed: dict[str, Any] = form.cleaned_data

    def write() -> list[str]:
        told = {"by": user, "on": typed["on"], "meeting": typed["meeting"]}
        return [str(claim_plant(plant, receiver=typed["keeper"], **told).token)]

    take_once(token=typed["submission"], user=user, purpose=f"got {plant.pk}", write=write)
