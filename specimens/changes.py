"""Where a change of records is told to what is computed from them.

Every service that writes a record ends in `announce`. One refresher listens, registered when the
applications are ready; it runs inside the transaction of the change, so that records and what is
computed from them are committed together or not at all. `foresee` asks, before a decision, what a
change would touch.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass

from django.db import transaction

KINDS = frozenset(
    {"specimens", "names", "sowings", "crosses", "claims", "placements", "photos", "keepings", "vocabulary"}
)

# What descent is read from comes after what names mean.
FIRST = ("names", "placements")

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
        self._closer: Callable[[], None] | None = None
        self._foreseers: list[Foreseer] = []
        # Of one thread or task alone: two requests at one moment do not collect for each other.
        self._collected: ContextVar[dict[str, set[int]] | None] = ContextVar("collected", default=None)

    def register_refresher(self, refresher: Refresher) -> None:
        """Called once, from `ready()`. A second, different one is an error."""
        if self._refresher not in (None, refresher):
            raise RuntimeError("A refresher is registered already.")
        self._refresher = refresher

    def register_closer(self, closer: Callable[[], None]) -> None:
        """Called once, from `ready()`: runs when the refresher has heard of every kind that changed together."""
        self._closer = closer

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
        collected = self._collected.get()
        if collected is not None:
            collected.setdefault(kind, set()).update(changed)
        else:
            self._tell({kind: changed})

    def _tell(self, changes: Mapping[str, Collection[int]]) -> None:
        """Tell the refresher of each kind, and then the closer once, if anything changed."""
        told = [kind for kind in changes if changes[kind]]
        for kind in sorted(told, key=lambda kind: (kind not in FIRST, kind)):
            if self._refresher is not None:
                self._refresher(kind, frozenset(changes[kind]))
        if told and self._closer is not None:
            self._closer()

    @contextmanager
    def announcing_once(self) -> Iterator[None]:
        """Collect what is announced inside and tell it at the end, once a kind, in the same transaction.

        For writing many records at once, as an import does; inside, what is computed is out of date. After
        an error nothing is told, for the transaction is undone. One within another adds to the outer one.
        """
        if self._collected.get() is not None:
            yield
            return
        token = self._collected.set({})
        try:
            yield
            collected = self._collected.get() or {}
        finally:
            self._collected.reset(token)
        if collected and not transaction.get_connection().in_atomic_block:
            raise transaction.TransactionManagementError("A change is announced inside its own transaction.")
        self._tell(collected)

    def foresee(self, kind: str, ids: Iterable[int]) -> list[Touched]:
        """What a change of these records would touch, by every listener's account."""
        asked = frozenset(ids)
        if kind not in KINDS:
            raise ValueError(f"No such kind of record: {kind}")
        return [touched for foreseer in self._foreseers for touched in foreseer(kind, asked)]


_announcements = Announcements()
announce = _announcements.announce
announcing_once = _announcements.announcing_once
foresee = _announcements.foresee
register_refresher = _announcements.register_refresher
register_closer = _announcements.register_closer
register_foreseer = _announcements.register_foreseer
