"""One society a module, and whoever attacks it."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from django.db import transaction
from django.test import Client, override_settings

from frondkeep.society.models import Member
from tests.test_doors import build_world


@pytest.fixture(scope="module", autouse=True)
def _own_folders(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Photos and files that wait, of this module alone."""
    place: Path = tmp_path_factory.mktemp("data")
    with override_settings(DATA_DIR=place, MEDIA_ROOT=place / "photos"):
        yield


@pytest.fixture(scope="module")
def society(_own_folders: None, django_db_setup: None, django_db_blocker: Any) -> Iterator[SimpleNamespace]:
    """The people and plants of the table of doors; made once, undone after the module."""
    with django_db_blocker.unblock():
        whole = transaction.atomic()
        whole.__enter__()
        try:
            yield build_world()
        finally:
            transaction.set_rollback(True)
            whole.__exit__(None, None, None)


@pytest.fixture
def world(society: SimpleNamespace, db: None) -> SimpleNamespace:
    """The same, what the test does to it undone, with what its objects remember forgotten."""
    for one in (*society.plants.values(), *society.people.values()):
        one.refresh_from_db()
    for member in society.people.values():
        member.user.refresh_from_db()
    society.name.refresh_from_db()
    return society


def signed_in(member: Member, **options: Any) -> Client:
    client = Client(**options)
    client.force_login(member.user)
    return client
