"""Shows and their schedules."""

from __future__ import annotations

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods, require_safe

from frondkeep.shows.finding import committees_show, show_by_id
from frondkeep.shows.forms.schedule import ClassForm, ShowForm
from frondkeep.shows.models import Entry, Show
from frondkeep.shows.services.entry_lists import entry_runs
from frondkeep.shows.services.schedules import schedule_of
from frondkeep.society.services.submissions import take_once, taken_before


@require_safe
def shows(request: HttpRequest) -> HttpResponse:
    return render(request, "shows/shows.html", {"coming": Show.objects.coming(), "past": Show.objects.past()})


@require_safe
def show(request: HttpRequest, pk: int) -> HttpResponse:
    found = show_by_id(pk)
    mine = Entry.objects.filter(show=found).standing().of_user(request.user).as_staged()
    context = {
        "show": found,
        "sections": schedule_of(found, count_entries=request.user.is_committee),
        "mine": [(entry, entry_runs(entry)) for entry in mine],
        "may_read_entries": request.user.is_committee or found.is_judged,
    }
    return render(request, "shows/show.html", context)


@require_http_methods(["GET", "HEAD", "POST"])
def add_show(request: HttpRequest) -> HttpResponse:
    if not request.user.is_committee:
        raise Http404
    taken = taken_before(request.POST.get("submission", ""), user=request.user, purpose="show")
    if taken:
        return redirect("show", *taken)
    form = ShowForm(request.POST or None)
    if form.is_valid():
        token = form.cleaned_data["submission"]
        (pk,) = take_once(token=token, user=request.user, purpose="show", write=lambda: [form.save().pk])
        return redirect("show", pk)
    return render(request, "shows/add_show.html", {"form": form}, status=422 if form.is_bound else 200)


@require_http_methods(["GET", "HEAD", "POST"])
def add_class(request: HttpRequest, pk: int) -> HttpResponse:
    found = committees_show(request.user, pk)
    purpose = f"class of {pk}"
    if taken_before(request.POST.get("submission", ""), user=request.user, purpose=purpose):
        return redirect(found)
    form = ClassForm(request.POST or None, show=found)
    if form.is_valid():
        token = form.cleaned_data["submission"]
        take_once(token=token, user=request.user, purpose=purpose, write=lambda: [form.save().pk])
        return redirect(found)
    return render(
        request, "shows/add_class.html", {"form": form, "show": found}, status=422 if form.is_bound else 200
    )
