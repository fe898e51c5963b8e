"""Entry numbers are given by class, once, and never to two."""

import threading

import pytest
from django.db import close_old_connections, connection

from frondkeep.shows.models import Entry
from frondkeep.shows.services.entries import number_entries, withdraw
from tests.cast import make_cultivar, make_member, make_plant, when
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show

KEPT = {"acquired": when("2015", LONG_AGO)}


def entered(classes: int = 2, members: int = 2) -> tuple[object, list[Entry]]:
    show = make_show()
    people = [make_member(f"Member {place}") for place in range(members)]
    entries = [
        make_entry(make_class(show, number), who, make_plant(who, make_cultivar(), **KEPT))
        if who == people[0]
        else make_entry(show.classes.get(number=number), who, make_plant(who, make_cultivar(), **KEPT))
        for number in range(classes, 0, -1)
        for who in people
    ]
    return show, entries


@pytest.mark.django_db
def test_numbers_follow_the_classes() -> None:
    show, _ = entered()
    assert number_entries(show) == 4
    listed = Entry.objects.order_by("number").values_list("number", "show_class__number")
    assert list(listed) == [(1, 1), (2, 1), (3, 2), (4, 2)]


@pytest.mark.django_db
def test_a_number_once_given_stays_and_late_entries_follow() -> None:
    show, entries = entered()
    number_entries(show)
    before = dict(Entry.objects.values_list("pk", "number"))
    withdraw(entries[0])
    ada = make_member("Late Ada")
    late = make_entry(show.classes.get(number=1), ada, make_plant(ada, make_cultivar(), **KEPT))
    assert number_entries(show) == 1
    late.refresh_from_db()
    assert late.number == 5
    assert dict(Entry.objects.exclude(pk=late.pk).values_list("pk", "number")) == before


@pytest.mark.django_db(transaction=True)
def test_two_who_number_at_once_give_each_entry_one_number() -> None:
    show, _ = entered(classes=3, members=2)

    def number() -> None:
        close_old_connections()
        number_entries(show)
        connection.close()

    threads = [threading.Thread(target=number) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert sorted(Entry.objects.values_list("number", flat=True)) == [1, 2, 3, 4, 5, 6]
