"""Many changes are told once, at the end, in the transaction they were made in."""

import pytest
from django.db import transaction

from specimens.changes import Announcements

pytestmark = pytest.mark.django_db


@pytest.fixture
def told():
    return []


@pytest.fixture
def announcements(told):
    made = Announcements()
    made.register_refresher(lambda kind, ids: told.append((kind, sorted(ids))))
    return made


def test_each_kind_is_told_once_and_names_before_plants(announcements, told):
    with transaction.atomic(), announcements.announcing_once():
        announcements.announce("specimens", [1])
        announcements.announce("names", [7])
        announcements.announce("specimens", [2, 1])
        assert told == []
    assert told == [("names", [7]), ("specimens", [1, 2])]


def test_one_within_another_waits_for_the_outer_one(announcements, told):
    with transaction.atomic(), announcements.announcing_once():
        with announcements.announcing_once():
            announcements.announce("specimens", [1])
        assert told == []
    assert told == [("specimens", [1])]


def tell_and_fail(announcements):
    with transaction.atomic(), announcements.announcing_once():
        announcements.announce("specimens", [1])
        raise ZeroDivisionError


def test_after_an_error_nothing_is_told_and_the_next_change_is_told_at_once(announcements, told):
    with pytest.raises(ZeroDivisionError):
        tell_and_fail(announcements)
    assert told == []
    with transaction.atomic():
        announcements.announce("specimens", [2])
    assert told == [("specimens", [2])]


def tell_in_a_shorter_transaction(announcements):
    with announcements.announcing_once(), transaction.atomic():
        announcements.announce("specimens", [1])


@pytest.mark.django_db(transaction=True)
def test_the_transaction_must_still_be_open_at_the_end(announcements):
    with pytest.raises(transaction.TransactionManagementError):
        tell_in_a_shorter_transaction(announcements)


def test_a_kind_that_does_not_exist_is_refused_at_once(announcements):
    with transaction.atomic(), announcements.announcing_once(), pytest.raises(ValueError, match="kind"):
        announcements.announce("ferns", [1])
