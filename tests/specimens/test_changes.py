"""A change of records is told to what is computed from them, inside its own transaction."""

import pytest
from django.db import transaction

from specimens.changes import Announcements, NoRefresherError, Touched

pytestmark = pytest.mark.django_db


def test_announcing_without_a_refresher_is_an_error() -> None:
    with pytest.raises(NoRefresherError), transaction.atomic():
        Announcements().announce("specimens", [1])


def test_the_refresher_hears_what_changed() -> None:
    heard = []
    announcements = Announcements()
    announcements.register_refresher(lambda kind, ids: heard.append((kind, set(ids))))
    with transaction.atomic():
        announcements.announce("specimens", [2, 1, 2])
        announcements.announce("names", [])
    assert heard == [("specimens", {1, 2})]


def test_an_unknown_kind_is_an_error() -> None:
    announcements = Announcements()
    announcements.register_refresher(lambda kind, ids: None)
    with pytest.raises(ValueError, match="No such kind"), transaction.atomic():
        announcements.announce("plants", [1])


def test_a_second_refresher_is_refused() -> None:
    announcements = Announcements()
    announcements.register_refresher(print)
    announcements.register_refresher(print)
    with pytest.raises(RuntimeError):
        announcements.register_refresher(repr)


def test_every_foreseer_is_asked() -> None:
    announcements = Announcements()
    announcements.register_foreseer(lambda kind, ids: [Touched("plants", len(ids), "plants renamed")])
    announcements.register_foreseer(lambda kind, ids: [Touched("entries", 1, "an entry")])
    assert [touched.kind for touched in announcements.foresee("names", [1, 2])] == ["plants", "entries"]
