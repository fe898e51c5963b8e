"""The society's plants: as portraits, as lines, as a table for a spreadsheet."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.db.models import QuerySet
from django.http import HttpRequest, HttpResponse, StreamingHttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.filters.now import filters_now
from frondkeep.desk.filters.plants import PlantFilters
from frondkeep.desk.plant_lists import listed
from frondkeep.desk.plants_csv import plants_csv
from frondkeep.desk.searching.asked import text_asked
from frondkeep.desk.searching.codes import did_you_mean
from frondkeep.society.models import User
from specimens.models import Specimen

PORTRAITS_A_PAGE, LINES_A_PAGE = 24, 60


def plants_in_sight(user: User) -> QuerySet[Specimen]:
    """Every plant the user may see, without records entered by mistake."""
    return Specimen.objects.visible_to(user).standing()


@require_safe
def plants(request: HttpRequest) -> HttpResponse:
    """Cards or lines of the plants that the filters leave, a page at a time."""
    sight = plants_in_sight(request.user)
    filters = PlantFilters(request.GET, queryset=sight, request=request)
    as_lines = request.GET.get("as") == "lines"
    paginator = Paginator(filters.qs.with_page_parts(), LINES_A_PAGE if as_lines else PORTRAITS_A_PAGE)
    page = paginator.get_page(request.GET.get("page"))
    context = {
        "filters": filters,
        "filters_now": filters_now(filters),
        "as_lines": as_lines,
        "page_obj": page,
        "count": paginator.count,
        "listed": listed(page.object_list, reader=request.user),
        "did_you_mean": [] if paginator.count else did_you_mean(text_asked(request), sight),
    }
    return render(request, "desk/plants.html", context)


@require_safe
def plants_as_csv(request: HttpRequest) -> StreamingHttpResponse:
    """The same plants, all pages of them. Growing places and hidden keepers are not in it."""
    filters = PlantFilters(request.GET, queryset=plants_in_sight(request.user), request=request)
    rows = plants_csv(filters.qs, reader=request.user)
    response = StreamingHttpResponse(rows, content_type="text/csv; charset=utf-8")
    response["Content-Disposition"] = 'attachment; filename="plants.csv"'
    response["X-Content-Type-Options"] = "nosniff"
    return response
