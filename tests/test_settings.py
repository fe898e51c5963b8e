"""Settings say loudly what is missing, and stand a deployment check."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from frondkeep.database import sqlite_database, wal_is_safe

ROOT = Path(__file__).resolve().parent.parent
PRODUCTION = {
    "SECRET_KEY": "k3" * 40 + "§unlike-any-other-9472",
    "ALLOWED_HOSTS": "ferns.example.org",
    "HTTPS": "on",
}


def run(*arguments: str, tmp_path: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    clean = {key: value for key, value in os.environ.items() if key in ("PATH", "HOME", "LANG")}
    return subprocess.run(
        [sys.executable, "manage.py", *arguments],
        cwd=ROOT,
        env={
            **clean,
            "DATA_DIR": str(tmp_path),
            "DJANGO_SETTINGS_MODULE": "frondkeep.settings",
            **environment,
        },
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )


def test_the_deployment_check_is_clean(tmp_path: Path) -> None:
    done = run("check", "--deploy", "--fail-level", "WARNING", tmp_path=tmp_path, **PRODUCTION)
    assert done.returncode == 0, done.stderr


def test_without_a_key_nothing_starts_and_the_message_says_why(tmp_path: Path) -> None:
    done = run("check", tmp_path=tmp_path)
    assert done.returncode != 0
    assert "Set SECRET_KEY in the environment" in done.stderr


@pytest.mark.parametrize(
    ("version", "safe"),
    [
        ((3, 40, 1), False),
        ((3, 51, 2), False),
        ((3, 51, 3), True),
        ((3, 50, 7), True),
        ((3, 44, 6), True),
        ((3, 53, 0), True),
    ],
)
def test_a_write_ahead_log_only_on_a_safe_library(
    version: tuple[int, int, int], safe: bool, tmp_path: Path
) -> None:
    command = sqlite_database(tmp_path / "a.sqlite3", version=version)["OPTIONS"]["init_command"]
    assert wal_is_safe(version) is safe
    assert ("journal_mode=WAL" in command and "synchronous=FULL" in command) is safe
    assert ("journal_mode=DELETE" in command and "synchronous=EXTRA" in command) is not safe


@pytest.mark.django_db
def test_the_open_database_keeps_what_it_acknowledged() -> None:
    from django.db import connection

    if connection.vendor != "sqlite":
        pytest.skip("asks SQLite about itself")
    with connection.cursor() as cursor:
        assert cursor.execute("PRAGMA journal_mode").fetchone()[0] == "wal"
        assert cursor.execute("PRAGMA synchronous").fetchone()[0] == 2
        assert cursor.execute("PRAGMA foreign_keys").fetchone()[0] == 1
