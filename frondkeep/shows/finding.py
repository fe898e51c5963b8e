"""Finding shows, classes and entries, for whoever may see or change them."""

from __future__ import annotations

from django.http import Http404

from frondkeep.shows.models import Entry, Show, ShowClass
from frondkeep.society.models import User


def show_by_id(pk: int) -> Show:
    """Every member may see a show and its schedule."""
    found = Show.objects.filter(pk=pk).first()
    if found is None:
        raise Http404
    return found


def committees_show(user: User, pk: int) -> Show:
    """A show for the committee to work on; Http404 for everybody else."""
    if not user.is_committee:
        raise Http404
    return show_by_id(pk)


def readable_entries_show(user: User, pk: int) -> Show:
    """A show whose entries this user may read with their exhibitors: the committee always, others after judging."""
    show = show_by_id(pk)
    if not (user.is_committee or show.is_judged):
        raise Http404
    return show


def class_of(show: Show, number: int) -> ShowClass:
    found = show.classes.filter(number=number).select_related("genus").first()
    if found is None:
        raise Http404
    return found


def own_entry(user: User, pk: int) -> Entry:
    """An entry that this user may withdraw: their own or their household's; the committee every one."""
    entries = Entry.objects.standing().select_related("show", "show_class", "exhibitor__keeper")
    found = (entries if user.is_committee else entries.of_user(user)).filter(pk=pk).first()
    if found is None:
        raise Http404
    return found
