"""System checks of the database: a write-ahead log only where the library is known to be safe."""

import sqlite3
from typing import Any

from django.conf import settings
from django.core.checks import CheckMessage, Error, Tags, register

from frondkeep.database import wal_is_safe


@register(Tags.database)
def sqlite_library(**kwargs: Any) -> list[CheckMessage]:
    """An error where write-ahead mode is set on a release of SQLite that can corrupt it."""
    options = settings.DATABASES["default"].get("OPTIONS", {})
    if "journal_mode=WAL" not in str(options.get("init_command", "")) or wal_is_safe(
        sqlite3.sqlite_version_info
    ):
        return []
    return [
        Error(
            f"SQLite {sqlite3.sqlite_version} can lose data in write-ahead mode.",
            hint="Install pysqlite3, or let frondkeep.database choose the journal.",
            id="frondkeep.E001",
        )
    ]
