"""Keeps what is computed right: runs inside the transaction of every change of a record."""

from __future__ import annotations

from collections.abc import Collection

from lineage.services.accepted import refresh_accepted


def refresh(kind: str, ids: Collection[int]) -> None:
    """Bring accepted names and lineage up to date after these records changed."""
    if kind in ("names", "placements"):
        refresh_accepted(ids)
