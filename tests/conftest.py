"""What every test may use."""

from pathlib import Path

import pytest
from django.conf import settings


@pytest.fixture(autouse=True, scope="session")
def _static_files_as_they_lie() -> None:
    """Pages are tested without collecting static files first: addresses bear no hash."""
    Path(settings.STATIC_ROOT).mkdir(parents=True, exist_ok=True)
    settings.STORAGES["staticfiles"] = {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"}


@pytest.fixture(autouse=True, scope="session")
def _quick_passwords() -> None:
    """A slow hash guards real passwords; invented ones need none."""
    settings.PASSWORD_HASHERS = ["django.contrib.auth.hashers.MD5PasswordHasher"]
