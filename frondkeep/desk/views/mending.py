"""The curator mends a record: how a plant came."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.finding import curators_plant
from frondkeep.desk.forms.origin import OriginForm
from frondkeep.desk.services.origins import mend_origin
from frondkeep.desk.stale_edits import with_version
from lineage.services.descent import DescentError
from specimens.services.edits import StaleEditError


@require_http_methods(["GET", "HEAD", "POST"])
def mend_plant_origin(request: HttpRequest, code: str) -> HttpResponse:
    plant = curators_plant(request.user, code)
    form = OriginForm(request.POST or None, plant=plant)
    context = {"form": form, "plant": plant}
    if not form.is_valid():
        return render(request, "desk/mend_origin.html", context, status=422 if form.is_bound else 200)
    typed = form.cleaned_data
    try:
        mend_origin(plant, version=typed["version"], came=typed["came"], piece_of=form.piece_of)
    except DescentError as problem:
        form.add_error("parent_code", f"{problem} Nothing was changed.")
        return render(request, "desk/mend_origin.html", context, status=422)
    except StaleEditError as stale:
        with_version(form, stale.now.version)
        return render(request, "desk/mend_origin.html", {**context, "now": stale.now}, status=409)
    say_saved(request, "How it came is mended. Its lineage is worked out anew.")
    return redirect("plant", code)
