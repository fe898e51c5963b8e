"""How the database is opened, and which SQLite libraries may keep a write-ahead log."""

from pathlib import Path
from typing import Any

# A reset of the write-ahead log can corrupt a database in these releases (sqlite.org, "WAL-reset bug").
FIRST_WITH_THE_BUG = (3, 7, 0)
LAST_WITH_THE_BUG = (3, 51, 2)
BACKPORTED = {(3, 50, 7), (3, 44, 6)}

Version = tuple[int, int, int]


def wal_is_safe(version: Version) -> bool:
    """Whether this release of SQLite may be trusted with a write-ahead log."""
    return not FIRST_WITH_THE_BUG <= version <= LAST_WITH_THE_BUG or version in BACKPORTED


def sqlite_database(path: Path, *, version: Version) -> dict[str, Any]:
    """Settings for one SQLite file that loses no acknowledged write in a power cut.

    Write transactions take the lock at once (IMMEDIATE), so that two people never end in a deadlock;
    reads take none, which is why requests are not wrapped in a transaction.
    """
    journal = (
        "journal_mode=WAL; PRAGMA synchronous=FULL"
        if wal_is_safe(version)
        else "journal_mode=DELETE; PRAGMA synchronous=EXTRA"
    )
    return {
        "ENGINE": "django.db.backends.sqlite3",
        "NAME": path,
        "OPTIONS": {"transaction_mode": "IMMEDIATE", "timeout": 20, "init_command": f"PRAGMA {journal};"},
        # A database in memory has no write-ahead log and would test something else.
        "TEST": {"NAME": path.with_name("test.sqlite3")},
    }
