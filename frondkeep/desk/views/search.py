"""Search over plants and names; a slip is answered."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_safe

from frondkeep.desk.plant_lists import listed
from frondkeep.desk.searching.asked import text_asked
from frondkeep.desk.searching.codes import code_meant, did_you_mean
from frondkeep.desk.searching.names import names_like
from frondkeep.desk.searching.plants import plants_matching
from frondkeep.desk.views.plants import plants_in_sight
from specimens.models import Name
from specimens.services.portrait_traits import sitters_for_names

MOST_PLANTS, MOST_NAMES = 24, 12


@require_safe
def search(request: HttpRequest) -> HttpResponse:
    """A code that is read goes straight to its plant; everything else finds plants and names."""
    text = text_asked(request)
    sight = plants_in_sight(request.user)
    code = code_meant(text)
    if code and sight.filter(code=code).exists():
        return redirect("plant", code)
    plants = plants_matching(sight, text, reader=request.user) if text else sight.none()
    context = {
        "q": text,
        "names": names_found(text),
        "plant_count": plants.count(),
        "listed": listed(plants.newest_first().with_page_parts()[:MOST_PLANTS], reader=request.user),
        "did_you_mean": did_you_mean(text, sight),
    }
    return render(request, "desk/search.html", context)


def names_found(text: str) -> list[Name]:
    ids = names_like(text, limit=MOST_NAMES)
    by_id = Name.objects.standing().select_related("accepted").in_bulk(ids)
    found = [by_id[pk] for pk in ids if pk in by_id]
    sitters = sitters_for_names(found)
    for name in found:
        name.sitter = sitters[name.pk]
    return found
