"""No model without its migration, and no migration without a name."""

import re
from pathlib import Path

import pytest
from django.core.management import call_command

ROOT = Path(__file__).resolve().parent.parent


@pytest.mark.django_db
def test_no_migration_is_missing() -> None:
    call_command("makemigrations", "--check", "--dry-run", verbosity=0)


def test_migrations_are_named() -> None:
    found = [
        path.stem
        for part in ("frondkeep", "specimens", "lineage")
        for path in (ROOT / part).glob("**/migrations/0*.py")
    ]
    assert found
    assert [name for name in found if re.search(r"_(auto_\d|initial)", name)] == []
