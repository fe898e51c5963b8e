"""Changing a plant's own record; of two edits at one time none is lost unseen."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding import editable_plant
from frondkeep.desk.forms.edit import EditPlantForm
from frondkeep.desk.stale_edits import two_versions, with_version
from specimens.services.edits import StaleEditError
from specimens.services.specimens import edit_specimen


@require_http_methods(["GET", "HEAD", "POST"])
def edit_plant(request: HttpRequest, code: str) -> HttpResponse:
    plant = editable_plant(request.user, code)
    form = EditPlantForm(request.POST or None, instance=plant, user=request.user)
    if not form.is_valid():
        return edit_page(request, form, status=422 if form.is_bound else 200)
    try:
        edit_specimen(plant, version=form.cleaned_data["version"], **form.changes)
    except StaleEditError as stale:
        versions = two_versions(form, stale.now)
        with_version(form, stale.now.version)
        return edit_page(request, form, status=409, versions=versions)
    say_saved(request, "The record is changed.", form.new_date)
    return redirect("plant", code)


def edit_page(request: HttpRequest, form: EditPlantForm, *, status: int, **more: object) -> HttpResponse:
    context = {"form": form, "plant": form.instance, **more}
    return render(request, "desk/edit_plant.html", context, status=status)
