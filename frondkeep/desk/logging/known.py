"""Every standing name kept ready to read tags by, in this process's memory, as long as no name changes."""

from __future__ import annotations

from threading import Lock

from django.db.models import Count, F, Sum

from specimens.models import Name
from specimens.services.reading import KnownNames

Stamp = tuple[object, ...]


class KeptKnownNames:
    def __init__(self) -> None:
        self.lock = Lock()
        self.stamp: Stamp = ()
        self.known: KnownNames | None = None

    def now(self) -> KnownNames:
        """The names of today; two queries where nothing changed. To be read only: whoever adds to it takes a copy."""
        stamp = stamp_of_names()
        with self.lock:
            if self.known is None or stamp != self.stamp:
                self.known, self.stamp = KnownNames.load(), stamp
            return self.known


def stamp_of_names() -> Stamp:
    """Changes with every edit of a name, which its history tells, and with what is accepted today."""
    latest = Name.history.order_by("-history_id").values_list("history_id", "history_date").first()
    accepted = Name.objects.standing().aggregate(Count("pk"), accepted=Sum(F("pk") * F("accepted")))
    return latest, *accepted.values()


known_names = KeptKnownNames().now
