"""A plant died, left, cannot be found — or was found again."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding import editable_plant
from frondkeep.desk.forms.ended import EndedForm
from frondkeep.desk.services.returning import found_again
from frondkeep.desk.stale_edits import with_version
from specimens.models import Specimen, State
from specimens.services.edits import StaleEditError
from specimens.services.specimens import edit_specimen, end_specimen


@require_http_methods(["GET", "HEAD", "POST"])
def ended(request: HttpRequest, code: str) -> HttpResponse:
    plant = editable_plant(request.user, code)
    form = EndedForm(request.POST or None, plant=plant)
    context = {"form": form, "plant": plant}
    if not form.is_valid():
        return render(request, "desk/ended.html", context, status=422 if form.is_bound else 200)
    try:
        now = write_end(form, plant)
    except StaleEditError as stale:
        with_version(form, stale.now.version)
        return render(request, "desk/ended.html", {**context, "now": stale.now}, status=409)
    say_saved(request, f"{plant.code}: {now.get_state_display()}.", form.cleaned_data["on"])
    return redirect("plant", code)


def write_end(form: EndedForm, plant: Specimen) -> Specimen:
    typed = form.cleaned_data
    version, state, on, reason = typed["version"], typed["state"], typed["on"], typed["reason"]
    if state == State.GROWING:
        return found_again(plant, version=version)
    if state == State.LOST:
        # It is still its keeper's: it may turn up.
        return edit_specimen(plant, version=version, state=state, ended=on, state_reason=reason)
    return end_specimen(plant, version=version, state=state, on=on, reason=reason)
