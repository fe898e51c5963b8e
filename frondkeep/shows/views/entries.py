"""The entries of a show: on screen, on paper, numbered, withdrawn; and the end of judging."""

from __future__ import annotations

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.utils.text import slugify
from django.views.decorators.http import require_POST, require_safe

from frondkeep.sheets import SheetError, entry_list_pdf, judges_copy_pdf
from frondkeep.shows.finding import committees_show, own_entry, readable_entries_show
from frondkeep.shows.models import Entry, Show
from frondkeep.shows.services.entries import close_judging, number_entries, withdraw
from frondkeep.shows.services.entry_lists import listed_classes, paper_list


@require_safe
def entry_list(request: HttpRequest, pk: int) -> HttpResponse:
    show = readable_entries_show(request.user, pk)
    listed = listed_classes(show, request.user)
    context = {
        "show": show,
        "classes": listed,
        "count": sum(len(one.entries) for one in listed),
        "without_number": sum(one.entry.number is None for each in listed for one in each.entries),
    }
    return render(request, "shows/entry_list.html", context)


@require_safe
def entry_list_paper(request: HttpRequest, pk: int) -> HttpResponse:
    return as_pdf(request, committees_show(request.user, pk), judges=False)


@require_safe
def judges_paper(request: HttpRequest, pk: int) -> HttpResponse:
    return as_pdf(request, committees_show(request.user, pk), judges=True)


def as_pdf(request: HttpRequest, show: Show, *, judges: bool) -> HttpResponse:
    """The paper, or what cannot be printed and why (422); the file's name tells nothing of exhibitors."""
    paper = "letter" if request.GET.get("paper") == "letter" else "a4"
    rows = paper_list(show, request.user, paper=paper, large_print="large" in request.GET)
    press = judges_copy_pdf if judges else entry_list_pdf
    try:
        data = press(rows, timestamp=timezone.now(), stand_in="stand-in" in request.GET)
    except SheetError as problem:
        return render(
            request,
            "shows/not_printed.html",
            {"show": show, "problem": problem, "path": request.path},
            status=422,
        )
    answer = HttpResponse(data, content_type="application/pdf")
    answer["Content-Disposition"] = (
        f'inline; filename="{"judges" if judges else "entry-list"}-{slugify(show.name)}.pdf"'
    )
    return answer


@require_POST
def number(request: HttpRequest, pk: int) -> HttpResponse:
    show = committees_show(request.user, pk)
    numbered = number_entries(show)
    messages.success(request, f"{numbered} entries were numbered. Numbers stay as they are from now on.")
    return redirect("entry-list", pk)


@require_POST
def close(request: HttpRequest, pk: int) -> HttpResponse:
    close_judging(committees_show(request.user, pk))
    messages.success(request, "Judging is closed. Everybody may now read whose entry is whose.")
    return redirect("show", pk)


@require_POST
def withdraw_entry(request: HttpRequest, pk: int) -> HttpResponse:
    entry: Entry = own_entry(request.user, pk)
    if not (entry.show.takes_entries or request.user.is_committee):
        messages.error(request, "Entries are closed. Ask the show committee to withdraw it.")
    else:
        withdraw(entry)
        messages.success(request, "The entry is withdrawn.")
    return redirect("show", entry.show_id)
