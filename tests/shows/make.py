"""Shows and classes for tests."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from django.utils import timezone

from frondkeep.shows.models import Entry, Exhibitor, Show, ShowClass
from frondkeep.shows.services.entries import Staged, enter
from frondkeep.shows.services.exhibitors import exhibitor_for
from frondkeep.society.models import Member
from specimens.models import Specimen
from tests.cast import keeper_for


def make_show(**fields: Any) -> Show:
    """A show a month ahead that takes entries."""
    fields.setdefault("date", timezone.localdate() + timedelta(days=30))
    fields.setdefault("entries_close_at", timezone.now() + timedelta(days=20))
    return Show.objects.create(name=fields.pop("name", "Autumn show"), **fields)


def make_class(show: Show, number: int = 1, title: str = "A staghorn", **fields: Any) -> ShowClass:
    return ShowClass.objects.create(show=show, number=number, title=title, **fields)


def exhibitor_of(show: Show, member: Member) -> Exhibitor:
    return exhibitor_for(show, keeper=keeper_for(member))


def make_entry(show_class: ShowClass, member: Member, *plants: Specimen, **options: Any) -> Entry:
    staged = tuple(Staged(specimen=plant) for plant in plants)
    return enter(
        show_class, exhibitor=exhibitor_of(show_class.show, member), plants=staged, by=member.user, **options
    )


LONG_AGO = date(2015, 5, 1)
