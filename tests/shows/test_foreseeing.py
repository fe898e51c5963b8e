"""Before a decision it is said which entries it would rename."""

import pytest

from frondkeep.shows.services.entries import close_judging, withdraw
from frondkeep.shows.services.foreseeing import foresee_entries
from tests.cast import make_cultivar, make_member, make_plant, when
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show

pytestmark = pytest.mark.django_db


def test_entries_under_a_name_are_counted_until_they_are_withdrawn_or_judged() -> None:
    ada, name, show = make_member(), make_cultivar(), make_show()
    plant = make_plant(ada, name, acquired=when("2015", LONG_AGO))
    assert list(foresee_entries("names", [name.pk])) == []
    entry = make_entry(make_class(show), ada, plant)
    (touched,) = foresee_entries("names", [name.pk])
    assert (touched.count, touched.words) == (1, "1 entry of Autumn show")
    assert [touched.count for touched in foresee_entries("specimens", [plant.pk])] == [1]
    assert list(foresee_entries("names", [make_cultivar("Other").pk])) == []
    withdraw(entry)
    assert list(foresee_entries("names", [name.pk])) == []


def test_a_judged_show_keeps_its_names() -> None:
    ada, name, show = make_member(), make_cultivar(), make_show()
    make_entry(make_class(show), ada, make_plant(ada, name, acquired=when("2015", LONG_AGO)))
    close_judging(show)
    assert list(foresee_entries("names", [name.pk])) == []
