"""A plant as the composer knows it, and the garden that holds them all."""

from dataclasses import dataclass, field
from datetime import date

from demo_data.calendar_words import rough_words
from demo_data.chance import Chance
from demo_data.cultivars import Cultivar
from demo_data.people import PEOPLE, Person, household_as_keeper
from demo_data.species import NEVER_DIVIDED

THE_SOCIETY = "the society"


@dataclass(eq=False)
class Sowing:
    """A sowing: ``sources`` are plants, or ``source_words`` where no plant is known."""

    number: str
    sown: date
    when: str
    by: Person
    sources: list["Plant"] = field(default_factory=list)
    source_words: str = ""
    medium: str = ""
    came_up: str = ""
    remarks: str = ""

    @property
    def mixed(self) -> bool:
        """Whether spores of several plants went into it."""
        return len(self.sources) > 1 or " + " in self.source_words


@dataclass(eq=False)
class Plant:
    """A plant.

    ``kind`` is what it truly is (a cultivar, a species with its genus, or empty), ``tag`` and ``believed`` what
    is written of it; ``got`` is the true day and ``when`` the words for it, likewise ``gone``.
    """

    kind: "Cultivar | str"
    how: str  # piece, sport, spores, outside, wild, unknown
    got: date
    when: str
    keeper: str
    source: str = ""
    parent: "Plant | None" = None
    parent_words: str = ""
    sowing: Sowing | None = None
    pot: str = ""
    tag: str = ""
    believed: str = ""
    state: str = "growing"
    gone: date | None = None
    gone_when: str = ""
    last_seen: str = ""
    remarks: str = ""
    private: bool = False
    number: str = ""
    numbered: bool = False  # must bear a number: an answer key points to it
    children: list["Plant"] = field(default_factory=list)
    tip: str = ""  # how its piece was taken, in the divisions book
    taken_by: str = ""
    meeting: str = ""

    @property
    def species(self) -> str:
        """The species it is filed under, with its genus; empty if nobody knows."""
        return self.kind if isinstance(self.kind, str) else self.kind.base

    @property
    def genus(self) -> str:
        """Its genus, or empty."""
        return self.species.split(" ")[0]

    @property
    def cultivar(self) -> Cultivar | None:
        """The cultivar it truly is, if it is one."""
        return None if isinstance(self.kind, str) else self.kind

    @property
    def epithet(self) -> str:
        """Its cultivar epithet, or empty."""
        return self.cultivar.epithet if self.cultivar else ""

    @property
    def named(self) -> str:
        """Its cultivar name, else its species."""
        return self.cultivar.name if self.cultivar else self.species

    @property
    def pups(self) -> bool:
        """Whether a piece may be taken from it without anybody asking questions."""
        return bool(self.species) and self.species.split()[1] not in NEVER_DIVIDED and not self.pot

    @property
    def seedling(self) -> bool:
        """Whether it, or the plant it is a piece of, came from a recorded sowing."""
        return self.sowing is not None or (self.parent is not None and self.parent.seedling)

    @property
    def depth(self) -> int:
        """Divisions since the first plant on record."""
        return self.parent.depth + 1 if self.parent else 0


class Garden:
    """Everything the society grows or grew, and the chance by which it came about."""

    def __init__(self, chance: Chance) -> None:
        self.chance = chance
        self.plants: list[Plant] = []
        self.pieces: list[Plant] = []
        self.sowings: list[Sowing] = []

    def add(self, kind: Cultivar | str, how: str, got: date, keeper: str, **more: object) -> Plant:
        """Put a plant into the plants' list and return it."""
        plant = Plant(kind, how, got, rough_words(got, self.chance), keeper, **more)  # type: ignore[arg-type]
        if plant.parent:
            plant.parent.children.append(plant)
        self.plants.append(plant)
        return plant

    def of(self, kind: Cultivar | str, *, before: date) -> list[Plant]:
        """Return the plants that truly are of this kind and were here before the day, oldest first."""
        found = [plant for plant in self.plants if plant.kind == kind and plant.got < before]
        return sorted(found, key=lambda plant: plant.got)

    def someone(self, year: int, *, but: str = "") -> Person:
        """Return a member who had joined by the year."""
        joined = [p for p in PEOPLE if p.joined <= max(year, 1990)]
        return self.chance.one_of(
            [p for p in joined if but not in (p.name, household_as_keeper(p.household))]
        )

    def keeper_for(self, person: Person) -> str:
        """Return how the list says who keeps it: partners mostly keep their plants together."""
        if person.household and self.chance.happens(0.7):
            return household_as_keeper(person.household)
        return person.name


def member_behind(keeper: str) -> Person | None:
    """Return a member who answers for the keeper, None for the society."""
    for person in PEOPLE:
        if keeper in (person.name, household_as_keeper(person.household)):
            return person
    return None
