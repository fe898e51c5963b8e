"""The pages of a plant's lineage and of a cultivar's."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from lineage.finding import standing_name, visible_plant
from lineage.services.lineage_pages import lineage_of_name, lineage_of_plant


@require_safe
def plant_lineage(request: HttpRequest, code: str) -> HttpResponse:
    plant = visible_plant(request.user, code)
    lineage = lineage_of_plant(plant, request.user)
    return render(request, "lineage/plant.html", {"plant": plant, "lineage": lineage})


@require_safe
def name_lineage(request: HttpRequest, pk: int) -> HttpResponse:
    named = standing_name(pk)
    lineage = lineage_of_name(named, request.user)
    return render(request, "lineage/name.html", {"named": named, "lineage": lineage})
