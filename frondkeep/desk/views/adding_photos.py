"""Adding a photo of one's plant."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.finding import editable_plant
from frondkeep.desk.forms.photos import PhotoForm
from frondkeep.society.models import User
from frondkeep.society.services.submissions import take_once
from specimens.models import Specimen
from specimens.services.photos import add_photo


@require_http_methods(["GET", "HEAD", "POST"])
def add_plant_photo(request: HttpRequest, code: str) -> HttpResponse:
    plant = editable_plant(request.user, code)
    form = PhotoForm(request.POST or None, request.FILES or None)
    if form.is_valid():
        write_photo(form, plant, request.user)
        messages.success(request, "The photo is kept.")
        return redirect(plant)
    status = 422 if form.is_bound else 200
    return render(request, "desk/add_photo.html", {"form": form, "plant": plant}, status=status)


def write_photo(form: PhotoForm, plant: Specimen, user: User) -> None:
    typed = form.cleaned_data

    def write() -> list[str]:
        photo = add_photo(
            plant,
            typed["read"],
            by=user,
            taken_by=getattr(user, "member", None) if typed["mine"] else None,
            shown_to=typed["shown_to"],
            caption=typed["caption"],
        )
        return [photo.key]

    take_once(token=typed["submission"], user=user, purpose=f"photo of {plant.pk}", write=write)
