"""The page of one plant."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.finding import visible_plant
from frondkeep.desk.plant_page import plant_page
from lineage.services.lineage_pages import lineage_of_plant


@require_safe
def plant(request: HttpRequest, code: str) -> HttpResponse:
    found = visible_plant(request.user, code)
    context = {
        "plant": found,
        "page": plant_page(found, request.user),
        "lineage": lineage_of_plant(found, request.user),
    }
    return render(request, "desk/plant.html", context)
