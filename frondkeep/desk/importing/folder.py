"""Reading several files from disk as tables, for the command line."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from frondkeep.desk.importing.headings import Table, understand
from frondkeep.desk.importing.intake import read_file


def read_tables(paths: Iterable[Path]) -> list[Table]:
    """Every sheet of every file, understood. Raises FileRefusedError, and OSError for a file that is not there."""
    return [understand(sheet) for path in paths for sheet in read_file(path.name, path.read_bytes())]
