"""One card made ready: what its tag and its logger's own view were read as."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from frondkeep.desk.logging.tags import TagRead, read_tag
from frondkeep.society.models import Keeper, User
from specimens.models import Came, Name, Specimen
from specimens.services.reading import KnownNames

MINE, NOT_KNOWN_GENUS = "mine", "?"


def key_of(place: int, what: str) -> str:
    """The name of a field of the card at this place."""
    return f"plants-{place}-{what}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A plant to be logged. `typed` are the cleaned fields of its card, `number` its place in the form from 0."""

    number: int
    typed: dict[str, Any]
    keeper: Keeper
    tag: TagRead
    think: TagRead | None

    def key(self, what: str) -> str:
        """The name of the field that answers a question about this plant."""
        return key_of(self.number, what)

    @property
    def came(self) -> Came:
        return Came(self.typed["came"])

    @property
    def parent(self) -> Specimen | None:
        parent: Specimen | None = self.typed["parent"]
        return parent

    @property
    def reads(self) -> list[tuple[str, TagRead]]:
        """What is read as a name: the tag, and what the logger thinks."""
        return [("tag", self.tag), *([("think", self.think)] if self.think else [])]

    @property
    def shown(self) -> tuple[str, TagRead]:
        """What the plant will be thought to be from: the logger's view before the tag."""
        return self.reads[-1]


def plan_card(typed: dict[str, Any], *, number: int, keeper: Keeper, known: KnownNames, reader: User) -> Plan:
    return Plan(
        number=number,
        typed=typed,
        keeper=typed.get("keeper") or keeper,
        tag=read_tag(typed["label_text"], known=known, reader=reader),
        think=read_tag(typed["think"], known=known, reader=reader) if typed.get("think") else None,
    )


def names_likely(plan: Plan, answers: dict[str, str]) -> list[Name]:
    """The names the plant may be of, as far as was answered: the one it is, else those it looks like."""
    what, read = plan.shown
    if read.match.name:
        return [read.match.name]
    means = answers.get(plan.key(f"{what}_means"), "")
    if means == MINE:
        return []
    chosen = read.named(means)
    return [chosen] if chosen else [like.name for like in read.lookalikes]
