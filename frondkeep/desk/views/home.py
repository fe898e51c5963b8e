"""The first page, and one's own plants."""

from __future__ import annotations

from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from frondkeep.desk.finding import proposals_for_curator
from frondkeep.desk.plant_lists import listed
from frondkeep.desk.plant_page import thoughts_said
from frondkeep.desk.waiting import duties_of, waiting_for
from frondkeep.shows.models import Show
from specimens.models import Specimen

ARRIVALS = 8
MINE_A_PAGE = 48
MOST_VIEWS = 200


@require_safe
def home(request: HttpRequest) -> HttpResponse:
    """What waits for me, and what came to the society of late."""
    shared = Specimen.objects.visible_to(request.user).standing().growing()
    arrivals = shared.newest_first().with_page_parts()[:ARRIVALS]
    context = {
        "waiting": waiting_for(request.user),
        "duties": duties_of(request.user),
        "show": Show.objects.coming().first(),
        "listed": listed(arrivals, reader=request.user),
    }
    return render(request, "desk/home.html", context)


@require_safe
def mine(request: HttpRequest) -> HttpResponse:
    """The plants I and my household keep, or with `gone` those that died or left; the newest first."""
    kept, owned = Specimen.objects.mine(request.user), Specimen.objects.owned_by(request.user)
    gone = "gone" in request.GET
    plants = owned.exclude(pk__in=kept.values("pk")) if gone else kept
    paginator = Paginator(plants.newest_first().with_page_parts(), MINE_A_PAGE)
    page = paginator.get_page(request.GET.get("page"))
    rows = listed(page.object_list, reader=request.user)
    context = {"page_obj": page, "count": paginator.count, "listed": rows, "gone": gone}
    return render(request, "desk/mine.html", context)


@require_safe
def proposals(request: HttpRequest) -> HttpResponse:
    """For the curator: every view of a plant that waits for an answer."""
    views = proposals_for_curator(request.user)[:MOST_VIEWS]
    waiting = thoughts_said(views, request.user)
    return render(request, "desk/proposals.html", {"waiting": waiting})
