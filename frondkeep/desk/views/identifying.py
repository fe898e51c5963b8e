"""Saying what a plant is, and the curator's answer to what others say."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding import editable_plant, waiting_proposal
from frondkeep.desk.forms.identify import IdentifyForm
from frondkeep.desk.services.proposals import AnsweredAlreadyError, accept_proposal, decline_proposal
from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once
from specimens.models import Identification, Specimen
from specimens.services.identifications import identify, pieces_below
from specimens.services.reading import name_for_label


@require_http_methods(["GET", "HEAD", "POST"])
def identify_plant(request: HttpRequest, code: str) -> HttpResponse:
    plant = editable_plant(request.user, code)
    form = IdentifyForm(request.POST or None, pieces=len(pieces_below(plant)))
    if form.is_valid():
        made = write_identification(form, plant, request.user)
        waits = made.standing == Identification.Standing.PROPOSED
        words = "Kept as your view: it waits for the curator." if waits else "The name is kept."
        say_saved(request, words, form.cleaned_data["on"])
        return redirect(plant)
    status = 422 if form.is_bound else 200
    return render(request, "desk/identify.html", {"form": form, "plant": plant}, status=status)


def write_identification(form: IdentifyForm, plant: Specimen, user: User) -> Identification:
    """One identification, however often the form was sent; a new name is added not yet checked."""
    typed = form.cleaned_data

    def write() -> list[int]:
        name, doubt = typed["name"], ""
        if name is None:
            name, doubt = name_for_label(typed["new_name"], by=user)
        made = identify(
            plant,
            name=name,
            by=user,
            ground=typed["ground"],
            qualifier=typed["qualifier"] or doubt,
            on=typed["on"],
            remarks=typed["remarks"],
            and_pieces=form.and_pieces,
        )
        return [made.pk]

    purpose = f"identify {plant.pk}"
    (pk,) = take_once(token=typed["submission"], user=user, purpose=purpose, write=write)
    return Identification.objects.get(pk=pk)


@require_POST
def answer_proposal(request: HttpRequest, code: str, pk: int) -> HttpResponse:
    proposal = waiting_proposal(request.user, code, pk)
    answer = request.POST.get("answer")
    try:
        if answer == "accept":
            accept_proposal(proposal, by=request.user)
            messages.success(request, "The plant bears this name now.")
        elif answer == "decline":
            decline_proposal(proposal)
            messages.success(request, "The plant keeps its name. The other view stays on record.")
    except AnsweredAlreadyError:
        messages.warning(request, "Somebody answered this a moment ago. Nothing was changed.")
    return redirect("plant", code)
