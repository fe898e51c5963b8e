"""Entering a class: a member their own plants, the committee anybody's."""

from __future__ import annotations

import uuid
from typing import Any

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.html import format_html
from django.utils.safestring import SafeString
from django.views.decorators.http import require_http_methods

from frondkeep.shows.finding import class_of, committees_show, show_by_id
from frondkeep.shows.forms.entering import CommitteeEnterForm, EnterForm
from frondkeep.shows.models import Show, ShowClass
from frondkeep.shows.services.entries import EntryRefusedError, Staged, enter
from frondkeep.shows.services.exhibitors import exhibitor_for, keeper_who_shows
from frondkeep.shows.services.fitting import plants_for_class
from frondkeep.society.models import Keeper, User
from frondkeep.society.services.submissions import take_once, taken_before
from specimens.models import Specimen
from specimens.services.shown_names import shown_name
from specimens.templatetags.names import mark_up


@require_http_methods(["GET", "HEAD", "POST"])
def enter_class(request: HttpRequest, pk: int, number: int) -> HttpResponse:
    """A member enters their own plants; which of them fit is said, and of the others why not."""
    show = show_by_id(pk)
    show_class = class_of(show, number)
    if already_entered(request, show_class):
        return redirect(show)
    keeper = keeper_of(request.user)
    fitting, unfit = plants_for_class(show, show_class, keeper, request.user)
    offered = [(plant, chip_words(plant)) for plant in fitting]
    form = EnterForm(request.POST or None, show_class=show_class, fitting=offered)
    if form.is_valid():
        try:
            save_entry(show_class, form.cleaned_data, request.user, keeper=keeper, plants=form.staged())
        except EntryRefusedError as refused:
            form.add_error(None, refused.reasons)
        else:
            messages.success(request, f"Entered in class {number}. You may withdraw it until entries close.")
            return redirect(show)
    context = {"form": form, "show": show, "show_class": show_class, "fitting": fitting, "unfit": unfit}
    return render(request, "shows/enter_class.html", context, status=422 if form.is_bound else 200)


def chip_words(plant: Specimen) -> SafeString:
    return format_html('{} <span class="code">{}</span>', mark_up(shown_name(plant).runs), plant.code)


@require_http_methods(["GET", "HEAD", "POST"])
def enter_for_anyone(request: HttpRequest, pk: int, number: int) -> HttpResponse:
    """The committee enters for a member, a household, a junior or a guest."""
    show = committees_show(request.user, pk)
    show_class = class_of(show, number)
    if already_entered(request, show_class):
        return redirect("entry-list", show.pk)
    form = CommitteeEnterForm(request.POST or None, user=request.user)
    if form.is_valid():
        try:
            save_entry(show_class, form.cleaned_data, request.user, keeper=form.keeper, plants=form.staged)
        except EntryRefusedError as refused:
            form.add_error(None, refused.reasons)
        else:
            messages.success(request, f"Entered in class {number}.")
            return redirect("entry-list", show.pk)
    context = {"form": form, "show": show, "show_class": show_class}
    return render(request, "shows/enter_for_anyone.html", context, status=422 if form.is_bound else 200)


def already_entered(request: HttpRequest, show_class: ShowClass) -> bool:
    """Whether this very form was taken before: its plants do not fit any more, for they are entered."""
    token = request.POST.get("submission", "")
    return taken_before(token, user=request.user, purpose=purpose_of(show_class)) is not None


def purpose_of(show_class: ShowClass) -> str:
    return f"entry in {show_class.pk}"


def keeper_of(user: User) -> Keeper:
    member = getattr(user, "member", None)
    if member is None:
        raise Http404
    return keeper_who_shows(member)


def save_entry(
    show_class: ShowClass,
    typed: dict[str, Any],
    user: User,
    *,
    keeper: Keeper | None,
    plants: tuple[Staged, ...],
) -> None:
    """Take the entry once; a form sent twice enters once. Raises EntryRefusedError."""
    show: Show = show_class.show
    token: uuid.UUID = typed["submission"]

    def write() -> list[int]:
        exhibitor = exhibitor_for(
            show,
            keeper=keeper,
            guest_name="" if keeper else typed["exhibitor"],
            junior=typed.get("junior", False),
        )
        entry = enter(
            show_class,
            exhibitor=exhibitor,
            plants=plants,
            by=user,
            title=typed.get("title", ""),
            note=typed.get("note", ""),
            overrule=typed.get("overrule", False),
        )
        return [entry.pk]

    take_once(token=token, user=user, purpose=purpose_of(show_class), write=write)
