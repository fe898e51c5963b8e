"""The show to come: its schedule, and who entered what."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from demo_data.calendar_words import TODAY
from demo_data.people import PEOPLE, Person, household_as_keeper
from demo_data.plants import THE_SOCIETY, Garden, Plant, member_behind
from demo_data.spreadsheets import Row

SHOW_DAY = TODAY + timedelta(days=17)
CLOSES = SHOW_DAY - timedelta(days=2)
OWNED_SINCE = date(2026, 6, 1)
MOST_ENTRIES = 6


@dataclass(frozen=True)
class ShowClass:
    """One class of the schedule; ``genus`` and ``kind`` are empty where any will do."""

    number: str
    section: str
    title: str
    staged: str
    genus: str
    kind: str
    plants: int


# section | title | staged | genus | kind | plants
_SCHEDULE = """
A Staghorn ferns|A staghorn, species|plant|Platycerium|species|1
A Staghorn ferns|A staghorn, named cultivar|plant|Platycerium|cultivar|1
A Staghorn ferns|A staghorn, hybrid|plant|Platycerium|hybrid|1
A Staghorn ferns|Three staghorns, distinct|plants|Platycerium||3
A Staghorn ferns|A staghorn on a mount no wider than 30 cm|plant|Platycerium||1
B Ferns under glass|A maidenhair|plant|Adiantum||1
B Ferns under glass|A sword fern, named cultivar|plant|Nephrolepis|cultivar|1
B Ferns under glass|A hare's-foot fern|plant|Davallia||1
B Ferns under glass|A fern in a hanging basket|plant|||1
B Ferns under glass|A fern of any other genus|plant|Phlebodium||1
C Hardy ferns|A spleenwort or hart's-tongue|plant|Asplenium||1
C Hardy ferns|A lady fern|plant|Athyrium||1
C Hardy ferns|A polypody|plant|Polypodium||1
C Hardy ferns|A buckler or male fern|plant|Dryopteris||1
C Hardy ferns|Two hardy ferns, dissimilar|plants||hardy|2
D Raised by the exhibitor|A staghorn raised from spores by the exhibitor|plant|Platycerium|raised from spores|1
D Raised by the exhibitor|A fern raised from spores by the exhibitor|plant||raised from spores|1
D Raised by the exhibitor|A pup or division of the last three years|plant||piece|1
D Raised by the exhibitor|A cultivar raised by a member|plant||raised by a member|1
E Fronds and pictures|Three fronds of hardy ferns|fronds||hardy|3
E Fronds and pictures|One fertile frond of a staghorn|fronds|Platycerium||1
E Fronds and pictures|A display of ferns, one metre square|display|||0
E Fronds and pictures|A photograph: ferns in rain|photograph|||0
E Fronds and pictures|A photograph: a member and a plant|photograph|||0
"""


def _read_schedule() -> tuple[ShowClass, ...]:
    classes = []
    for place, line in enumerate(_SCHEDULE.strip().splitlines(), start=1):
        section, title, staged, genus, kind, plants = line.split("|")
        classes.append(ShowClass(str(place), section, title, staged, genus, kind, int(plants)))
    return tuple(classes)


CLASSES = _read_schedule()
SCHEDULE_HEADINGS = [
    "Class no.", "Section", "Title", "What is staged", "Genus wanted", "Kind wanted", "How many", "Show",
    "Date of show", "Entries close",
]  # fmt: skip
ENTRY_HEADINGS = ["Class", "Exhibitor", "Plant", "Note"]
PROBLEM_HEADINGS = ["class", "exhibitor", "plant", "why"]
HARDY = ("Asplenium", "Athyrium", "Dryopteris", "Polypodium")
MEMBER_NAMES = {person.name for person in PEOPLE}
PHOTOGRAPHS = ("After the storm", "Drip", "Morning in the shade house", "Five greens", "Hanging on")
DISPLAYS = ("Ferns of a back yard", "A wet wall")
NOTES = ("", "", "", "", "needs a hook", "1 m across", "will bring it in the morning", "first time showing")


def schedule_rows() -> list[Row]:
    """The schedule with its headings; the show's own dates are repeated in every row."""
    show = ["Autumn Fern Show", f"{SHOW_DAY.day} {SHOW_DAY:%B %Y}", f"{CLOSES.day} {CLOSES:%B %Y}"]
    rows: list[Row] = [SCHEDULE_HEADINGS]
    for one in CLASSES:
        many = str(one.plants) if one.plants else ""
        rows.append([one.number, one.section, one.title, one.staged, one.genus, one.kind, many, *show])
    return rows


class Entries:
    """Fills the entry list: a few an exhibitor, one an exhibitor and class."""

    def __init__(self, garden: Garden) -> None:
        self.garden = garden
        self.rows: list[list[str]] = []
        self.problems: list[list[str]] = []
        self._entered: set[tuple[str, str]] = set()
        self._count: dict[str, int] = {}
        self._staged: set[int] = set()

    def fill(self) -> None:
        """Write all the entries, the faulty ones among them."""
        self._faulty()
        for show_class in CLASSES:
            wanted = 3 + int(show_class.number) % 2 if show_class.staged == "plant" else 2
            for _ in range(wanted - sum(row[0] == show_class.number for row in self.rows)):
                self._enter(show_class)
        self.rows.sort(key=lambda row: int(row[0]))

    def _enter(self, show_class: ShowClass) -> None:
        if show_class.staged in ("display", "photograph"):
            self._unplanted(show_class)
            return
        fitting = [plant for plant in self._showable() if fits(plant, show_class)]
        for plant in self.garden.chance.some_of(fitting, len(fitting)):
            own = [
                other
                for other in fitting
                if exhibitor_of(other) == exhibitor_of(plant) and other.kind != plant.kind
            ]
            staged = [plant, *_distinct(own, show_class.plants - 1)]
            if len(staged) == show_class.plants and self._free(show_class, exhibitor_of(plant), staged):
                self._write(show_class, staged)
                return

    def _showable(self) -> list[Plant]:
        return [
            plant for plant in self.garden.plants
            if plant.number and plant.gone is None and plant.got < OWNED_SINCE and not plant.pot
            and plant.keeper != THE_SOCIETY and plant.species and id(plant) not in self._staged
            and not (plant.private or "?" in plant.believed)
        ]  # fmt: skip

    def _free(self, show_class: ShowClass, exhibitor: str, staged: Sequence[Plant] = ()) -> bool:
        """Whether the rules let the exhibitor enter: once a class, each name once, six times in all."""
        used = [(show_class.number, exhibitor), *((exhibitor, plant.named) for plant in staged)]
        return not self._entered.intersection(used) and self._count.get(exhibitor, 0) < MOST_ENTRIES

    def _write(
        self, show_class: ShowClass, plants: list[Plant], *, why: str = "", exhibitor: str = ""
    ) -> None:
        chance = self.garden.chance
        exhibitor = exhibitor or exhibitor_of(plants[0])
        self._staged.update(id(plant) for plant in plants)
        self._entered.update((exhibitor, plant.named) for plant in plants)
        by_name = show_class.staged == "fronds" or (chance.happens(0.25) and not why)
        text = "; ".join(plant.named if by_name and not plant.seedling else plant.number for plant in plants)
        self._put(show_class, exhibitor, text, note=chance.one_of(NOTES))
        if why:
            self.problems.append([show_class.number, exhibitor, text, why])

    def _put(self, show_class: ShowClass, exhibitor: str, text: str, *, note: str) -> None:
        self._entered.add((show_class.number, exhibitor))
        self._count[exhibitor] = self._count.get(exhibitor, 0) + 1
        self.rows.append([show_class.number, exhibitor, text, note])

    def _unplanted(self, show_class: ShowClass) -> None:
        titles = DISPLAYS if show_class.staged == "display" else PHOTOGRAPHS
        exhibitor = exhibitor_for(self.garden.someone(2024))
        if self._free(show_class, exhibitor):
            self._put(show_class, exhibitor, self.garden.chance.one_of(titles), note="")

    def _faulty(self) -> None:
        staghorns = [plant for plant in self._showable() if plant.genus == "Platycerium" and plant.epithet]
        late = next(
            p
            for p in reversed(self.garden.plants)
            if p.number
            and p.got > OWNED_SINCE + timedelta(days=30)
            and p.gone is None
            and p.species
            and p.keeper != THE_SOCIETY
        )
        self._write(CLASSES[8], [late], why="kept for less than six months")
        borrowed = staghorns[0]
        other = next(exhibitor_of(p) for p in staghorns if exhibitor_of(p) != exhibitor_of(borrowed))
        self._write(CLASSES[1], [borrowed], exhibitor=other, why="the exhibitor does not keep it")
        sword = next(plant for plant in self._showable() if plant.genus == "Nephrolepis")
        self._write(CLASSES[5], [sword], why="another genus than the class wants")
        pair = [plant for plant in staghorns if exhibitor_of(plant) == exhibitor_of(staghorns[5])][:2]
        self._write(CLASSES[3], pair, why="fewer plants than the class wants")
        dead = next(
            p for p in self.garden.plants if p.number and p.state == "dead" and p.genus == "Platycerium"
        )
        self._write(CLASSES[4], [dead], why="recorded as dead")


def exhibitor_for(person: Person) -> str:
    """Return who shows for a member: partners show as one."""
    return household_as_keeper(person.household) if person.household else person.name


def exhibitor_of(plant: Plant) -> str:
    """Return who shows a plant, by its keeper."""
    behind = member_behind(plant.keeper)
    return exhibitor_for(behind) if behind else plant.keeper


def fits(plant: Plant, show_class: ShowClass) -> bool:
    """Whether a plant is what the class asks for, by what the list says of it."""
    if show_class.genus and plant.genus != show_class.genus:
        return False
    cultivar = plant.cultivar
    return {
        "species": cultivar is None and not plant.seedling,
        "cultivar": cultivar is not None,
        "hybrid": cultivar is not None and cultivar.is_hybrid,
        "raised from spores": plant.sowing is not None and plant.source == "own",
        "raised by a member": cultivar is not None and cultivar.raiser in MEMBER_NAMES,
        "hardy": plant.genus in HARDY,
        "piece": plant.how == "piece" and plant.got >= date(2023, 12, 12),
        "": True,
    }[show_class.kind]


def _distinct(plants: list[Plant], count: int) -> list[Plant]:
    return list({plant.epithet or plant.species: plant for plant in plants}.values())[:count]
