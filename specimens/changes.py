"""Where a change of records is told to what is computed from them.

Every service that writes a record ends in `announce`. One refresher listens, registered when the
applications are ready; it runs inside the transaction of the change, so that records and what is
computed from them are committed together or not at all. `foresee` asks, before a decision, what a
change would touch.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass

from django.db import transaction

KINDS = frozenset(
    {"specimens", "names", "sowings", "crosses", "claims", "placements", "photos", "keepings", "vocabulary"}
)

Refresher = Callable[[str, Collection[int]], None]


@dataclass(frozen=True, slots=True)
class Touched:
    """One thing that a change would touch: what kind, how many, and a sentence for the page."""

    kind: str
    count: int
    words: str


Foreseer = Callable[[str, Collection[int]], Iterable[Touched]]


class NoRefresherError(RuntimeError):
    """A record was written with nobody to keep what is computed from it right."""


class Announcements:
    """The refresher and the foreseers of one process."""

    def __init__(self) -> None:
        self._refresher: Refresher | None = None
        self._foreseers: list[Foreseer] = []

    def register_refresher(self, refresher: Refresher) -> None:
        """Called once, from `ready()`. A second, different one is an error."""
        if self._refresher not in (None, refresher):
            raise RuntimeError("A refresher is registered already.")
        self._refresher = refresher

    def register_foreseer(self, foreseer: Foreseer) -> None:
        if foreseer not in self._foreseers:
            self._foreseers.append(foreseer)

    def announce(self, kind: str, ids: Iterable[int]) -> None:
        """Tell that these records changed; runs in the caller's transaction, which must be open.

        With no ids nothing happens. Raises ValueError for an unknown kind, NoRefresherError with no
        refresher, and whatever the refresher raises (a cycle of descent, say), which undoes the change.
        """
        changed = frozenset(ids)
        if kind not in KINDS:
            raise ValueError(f"No such kind of record: {kind}")
        if self._refresher is None:
            raise NoRefresherError(kind)
        if not transaction.get_connection().in_atomic_block:
            raise transaction.TransactionManagementError("A change is announced inside its own transaction.")
        if changed:
            self._refresher(kind, changed)

    def foresee(self, kind: str, ids: Iterable[int]) -> list[Touched]:
        """What a change of these records would touch, by every listener's account."""
        asked = frozenset(ids)
        if kind not in KINDS:
            raise ValueError(f"No such kind of record: {kind}")
        return [touched for foreseer in self._foreseers for touched in foreseer(kind, asked)]


_announcements = Announcements()
announce = _announcements.announce
foresee = _announcements.foresee
register_refresher = _announcements.register_refresher
register_foreseer = _announcements.register_foreseer
