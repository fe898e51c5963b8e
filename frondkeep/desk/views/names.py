"""The names: the list, each name's page, and the curator's changes."""

from __future__ import annotations

from django.contrib import messages
from django.core.paginator import Paginator
from django.db import IntegrityError
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frondkeep.desk.echoes import say_saved
from frondkeep.desk.filters.names import NameFilters
from frondkeep.desk.filters.now import filters_now
from frondkeep.desk.finding import curators_name, standing_name
from frondkeep.desk.forms.names import EditNameForm
from frondkeep.desk.name_page import name_page
from frondkeep.desk.stale_edits import two_versions, with_version
from specimens.models import Name
from specimens.services.edits import StaleEditError
from specimens.services.names import edit_name
from specimens.services.portrait_traits import sitters_for_names

NAMES_A_PAGE = 24


@require_safe
def names(request: HttpRequest) -> HttpResponse:
    """Every standing name the filters leave, a page at a time, each with its portrait."""
    standing = Name.objects.standing().select_related("accepted", "genus").in_reading_order()
    filters = NameFilters(request.GET, queryset=standing, request=request)
    paginator = Paginator(filters.qs, NAMES_A_PAGE)
    page = paginator.get_page(request.GET.get("page"))
    sitters = sitters_for_names(page.object_list)
    for name in page.object_list:
        name.sitter = sitters[name.pk]
    context = {
        "filters": filters,
        "filters_now": filters_now(filters),
        "page_obj": page,
        "count": paginator.count,
    }
    return render(request, "desk/names.html", context)


@require_safe
def name(request: HttpRequest, pk: int) -> HttpResponse:
    page = name_page(standing_name(pk), request.user)
    return render(request, "desk/name.html", {"page": page, "name": page.name})


@require_http_methods(["GET", "HEAD", "POST"])
def edit(request: HttpRequest, pk: int) -> HttpResponse:
    """The curator changes a name; every name under it is written anew."""
    found = curators_name(request.user, pk)
    form = EditNameForm(request.POST or None, instance=found)
    if not form.is_valid():
        return edit_page(request, form, status=422 if form.is_bound else 200)
    try:
        edit_name(found, version=form.cleaned_data["version"], **form.changes)
    except StaleEditError as stale:
        versions = two_versions(form, stale.now)
        with_version(form, stale.now.version)
        return edit_page(request, form, status=409, versions=versions)
    except IntegrityError:
        form.add_error("epithet", "This name is on record already. Perhaps it is the same plant?")
        return edit_page(request, form, status=422)
    say_saved(request, "The name is changed.", form.cleaned_data.get("introduced"))
    return redirect("name", pk)


def edit_page(request: HttpRequest, form: EditNameForm, *, status: int, **more: object) -> HttpResponse:
    stands = standing_name(form.instance.pk)
    return render(request, "desk/edit_name.html", {"form": form, "name": stands, **more}, status=status)


@require_POST
def mark_checked(request: HttpRequest, pk: int) -> HttpResponse:
    """The curator has looked at a name that a member brought in."""
    found = curators_name(request.user, pk)
    if not found.checked:
        try:
            edit_name(found, version=found.version, checked=True)
            messages.success(request, f"{found.written} is checked.")
        except StaleEditError:
            messages.warning(request, "Somebody changed this name a moment ago. Look at it once more.")
    return redirect("name", pk)
