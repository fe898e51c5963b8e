"""The page of one plant."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.finding import visible_plant
from frondkeep.desk.plant_page import plant_page


@require_safe
def plant(request: HttpRequest, code: str) -> HttpResponse:
    page = plant_page(visible_plant(request.user, code), request.user)
    return render(request, "desk/plant.html", {"page": page, "plant": page.plant})
