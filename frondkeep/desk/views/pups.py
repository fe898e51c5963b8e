"""Took a pup."""

from __future__ import annotations

from django.db.models import Q
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.echoes import listed_codes, say_saved
from frondkeep.desk.finding import editable_plant
from frondkeep.desk.forms.keepers import keepers_at_hand
from frondkeep.desk.forms.pups import TookPupForm
from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once
from specimens.models import Name, Specimen
from specimens.services.specimens import take_pups

UNLIKELY = (
    "This fern makes no pups by nature, or very rarely. Did it make one? Tick the box, and it is logged."
)


@require_http_methods(["GET", "HEAD", "POST"])
def took_pup(request: HttpRequest, code: str) -> HttpResponse:
    parent = editable_plant(request.user, code)
    form = TookPupForm(
        request.POST or None,
        user=request.user,
        at_hand=keepers_at_hand(request.user, parent.keeper),
        unlikely=UNLIKELY if is_solitary(parent) else "",
    )
    if form.is_valid():
        codes = log_pups(form, parent, request.user)
        say_saved(request, f"Logged: {listed_codes(codes)}. Write it on the tag.", form.cleaned_data["taken"])
        return redirect(parent)
    status = 422 if form.is_bound else 200
    return render(request, "desk/took_pup.html", {"form": form, "plant": parent}, status=status)


def log_pups(form: TookPupForm, parent: Specimen, user: User) -> list[str]:
    """The codes of the pieces; a form sent twice gives the first ones."""
    typed = form.cleaned_data

    def write() -> list[str]:
        pups = take_pups(
            parent,
            count=typed["count"],
            by=user,
            keeper=typed["keeper"],
            taken=typed["taken"],
            kind=typed["kind"],
            label_text=typed["label_text"],
        )
        return [pup.code for pup in pups]

    return take_once(token=typed["submission"], user=user, purpose=f"pups of {parent.pk}", write=write)


def is_solitary(plant: Specimen) -> bool:
    """Whether the species it is thought to be makes no pups by nature."""
    thought = plant.identification
    if thought is None or thought.name is None:
        return False
    accepted = thought.name.accepted or thought.name
    return Name.objects.filter(Q(pk=accepted.pk) | Q(pk=accepted.parent_id), solitary=True).exists()
