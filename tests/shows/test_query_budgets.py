"""Each page of a show asks a fixed number of questions, whatever it lists."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext

from frondkeep.shows.models import Show
from frondkeep.society.models import Member
from tests.cast import make_committee, make_member, make_plant, make_species, when
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show

pytestmark = pytest.mark.django_db
KEPT = {"acquired": when("2015", LONG_AGO)}


def questions(member: Member, url: str) -> int:
    client = Client()
    client.force_login(member.user)
    client.get(url)
    with CaptureQueriesContext(
        connection,
    ) as asked:
        assert client.get(url).status_code == 200
    return len(asked)


def grown(reader: Member, url: str, grow: Callable[[int], object]) -> tuple[int, int]:
    """Questions asked with one row, and with twenty more."""
    one = questions(reader, url)
    for place in range(20):
        grow(place)
    return one, questions(reader, url)


def enter_one(show: Show, place: int) -> None:
    who = make_member(f"Exhibitor {place}")
    make_entry(show.classes.first(), who, make_plant(who, make_species(f"species-{place}"), **KEPT))


def test_the_list_of_shows() -> None:
    # session, user, keepers (for the head), coming, past
    make_show()
    one, many = grown(make_member(), "/shows/", lambda place: make_show(name=f"Show {place}"))
    assert one == many <= 7


def test_a_show_with_its_schedule() -> None:
    # session, user, roles, keepers, show, classes, own entries with plants and sources
    show = make_show()
    make_class(show)
    one, many = grown(make_member(), f"/shows/{show.pk}/", lambda place: make_class(show, place + 2))
    assert one == many <= 9


def test_a_class_with_the_plants_that_fit() -> None:
    # as above, and: plants with keepings and sources, keepings, entered, claims
    ada, show = make_member("Ada Grower"), make_show()
    make_class(show)
    make_plant(ada, make_species("first"), **KEPT)
    url = f"/shows/{show.pk}/classes/1/enter/"
    one, many = grown(ada, url, lambda place: make_plant(ada, make_species(f"species-{place}"), **KEPT))
    assert one == many <= 14


def test_the_entry_list() -> None:
    # session, user, roles, member, show, entries, plants, sources, classes
    show = make_show()
    make_class(show)
    enter_one(show, 100)
    one, many = grown(make_committee(), f"/shows/{show.pk}/entries/", lambda place: enter_one(show, place))
    assert one == many <= 9
