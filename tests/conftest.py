"""What every test may use, and what all of them go without: slow passwords, hashed file names, deadlines."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.conf import settings
from hypothesis import HealthCheck
from hypothesis import settings as generated
from pytest_django import DjangoDbBlocker

from tests.shared_rows import rows_of_a_module

# A shared machine makes any deadline a false alarm. In CI the same examples are drawn every time, so that
# a change is judged by what it changed; `HYPOTHESIS_PROFILE=thorough` looks for what nobody thought of.
SLOW_IS_NO_FAULT = [HealthCheck.too_slow]
generated.register_profile(
    "everyday", deadline=None, max_examples=60, print_blob=True, suppress_health_check=SLOW_IS_NO_FAULT
)
generated.register_profile("ci", generated.get_profile("everyday"), derandomize=True, database=None)
generated.register_profile("thorough", generated.get_profile("everyday"), max_examples=2_000)
generated.load_profile(os.environ.get("HYPOTHESIS_PROFILE") or ("ci" if os.environ.get("CI") else "everyday"))


@pytest.fixture(autouse=True, scope="session")
def _static_files_as_they_lie() -> None:
    """Pages are tested without collecting static files first: addresses bear no hash."""
    Path(settings.STATIC_ROOT).mkdir(parents=True, exist_ok=True)
    settings.STORAGES["staticfiles"] = {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}


@pytest.fixture(autouse=True, scope="session")
def _quick_passwords() -> None:
    """A slow hash guards real passwords; invented ones need none."""
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]


@pytest.fixture(scope="module")
def reference_names(django_db_setup: None, django_db_blocker: DjangoDbBlocker) -> Iterator[None]:
    """The shipped names, on record while a module's tests run; its tests still ask for `db`."""
    from specimens.services.reference_names import load_reference_names

    with rows_of_a_module(django_db_blocker):
        load_reference_names()
        yield


@pytest.fixture(autouse=True)
def _names_kept_in_memory_are_read_anew() -> None:
    """Each test undoes its names, and the next may get the same ids: what is kept by them must not be believed."""
    from frondkeep.desk.logging.known import known_names
    from frondkeep.desk.searching import names
    from lineage.services.kept_names import kept_cultivars

    for kept in (known_names.__self__, names._kept, kept_cultivars):
        kept.stamp = ()
