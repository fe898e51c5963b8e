"""Rows that all tests of a module read: made once, instead of anew for every test.

They are rolled back after the module's last test, as what each test does to them is after that test. A
module that shares rows has no tests with `transaction=True`. What a fixture gave out of a module's rows is
copied for each test: `copy.deepcopy(world_once)`.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

from django.db import transaction
from pytest_django import DjangoDbBlocker


@contextmanager
def rows_of_a_module(blocker: DjangoDbBlocker) -> Iterator[None]:
    """For a fixture of `scope="module"` that asks for `django_db_setup` and `django_db_blocker`."""
    with blocker.unblock(), transaction.atomic():
        yield
        transaction.set_rollback(True)
