"""The plants' list: fates, numbers, and the untidy columns it is kept in."""

from datetime import date, timedelta

from demo_data.calendar_words import TODAY, day_between, rough_words
from demo_data.cultivars import Cultivar
from demo_data.people import BY_FIRST
from demo_data.planted import planted_pairs
from demo_data.plants import THE_SOCIETY, Garden, Plant

HOW_WORDS = {
    "piece": ("pup", "pup", "piece", "division"),
    "sport": ("sport",),
    "spores": ("from spores", "spores", "sporeling"),
    "outside": ("bought", "bought", "gift", "swap"),
    "wild": ("collected wild", "wild"),
    "unknown": ("don't know", "?", ""),
}
STATE_WORDS = {
    "growing": ("growing", "growing", "alive", "ok", ""),
    "dead": ("dead", "died"),
    "left": ("left the society", "given away"),
    "lost": ("cannot find", "can't be found"),
    "stolen": ("stolen",),
    "mistake": ("entered by mistake",),
}
FATES = ("dead",) * 12 + ("left",) * 5 + ("lost",) * 4 + ("stolen",)
PLACES = (
    "shade house, north bench",
    "bathroom window",
    "under the apple tree",
    "back porch",
    "greenhouse, top shelf",
    "stair well",
    "behind the shed",
    "kitchen sill",
    "lean-to, left wall",
    "pond edge",
    "cellar steps",
    "",
)
MOUNTS = {
    "Platycerium": ("cork slab", "cedar board", "wire basket", "oak plank", "tree fern slab", ""),
    "Davallia": ("hanging basket", "pan", ""),
    "Nephrolepis": ("hanging basket", "pot", ""),
}
REMARKS = (
    "",
    "",
    "",
    "",
    "",
    "scale last winter",
    "has been split",
    "needs a bigger board",
    "two growing points",
    "ask before taking a pup",
    "photo in the album",
    "slow",
    "won a second once",
    "tag rewritten",
)


def decide_fates(garden: Garden) -> None:
    """Let old plants die, leave and get lost, but not before their last piece or spores were taken."""
    kept = _first_of_planted_names(garden)
    for plant in garden.plants:
        if plant.gone is None and id(plant) not in kept:
            _decide(plant, garden)
    nameless = [
        plant for plant in garden.plants if not plant.kind and not plant.sowing and plant.gone is None
    ]
    for plant in garden.chance.some_of(nameless, 2):
        plant.state, plant.gone = "mistake", plant.got + timedelta(days=30)


def _first_of_planted_names(garden: Garden) -> set[int]:
    """The oldest plant of every name in the answer key: a suspicion wants plants to look at."""
    planted = {name for first, second, *_ in planted_pairs() for name in (first, second)}
    oldest: dict[str, Plant] = {}
    for plant in sorted(garden.plants, key=lambda plant: plant.got, reverse=True):
        if isinstance(plant.kind, Cultivar) and plant.kind.name in planted:
            oldest[plant.kind.name] = plant
    return {id(plant) for plant in oldest.values()}


def _decide(plant: Plant, garden: Garden) -> None:
    chance, last = garden.chance, _last_use(plant, garden)
    room = (TODAY - last).days
    if room > 150 and chance.happens(min(0.08 + 0.012 * (TODAY.year - plant.got.year), 0.5)):
        plant.state = chance.one_of(FATES)
        plant.gone = day_between(last + timedelta(days=60), TODAY - timedelta(days=40), chance)
        plant.gone_when = rough_words(plant.gone, chance)
        plant.last_seen = (
            rough_words(day_between(last, plant.gone, chance), chance) if chance.happens(0.5) else ""
        )
    elif chance.happens(0.7):
        plant.last_seen = rough_words(
            day_between(max(last, date(2025, 3, 1)), date(2026, 11, 20), chance), chance
        )


def _last_use(plant: Plant, garden: Garden) -> date:
    taken = [child.got for child in plant.children]
    sown = [sowing.sown for sowing in garden.sowings if plant in sowing.sources]
    return max([plant.got, *taken, *sown])


def number_all(garden: Garden) -> None:
    """Number plants and pieces in the order they came; some that nothing points to never got a number."""
    chance = garden.chance
    sources = {id(source) for sowing in garden.sowings for source in sowing.sources}
    garden.plants.sort(key=lambda plant: plant.got)
    garden.pieces.sort(key=lambda piece: piece.got)
    for place, plant in enumerate(garden.plants, start=1):
        if plant.numbered or plant.children or id(plant) in sources or not chance.happens(0.16):
            plant.number = f"F{place}"
    for place, piece in enumerate(garden.pieces, start=1):
        piece.number = f"D{place}"


PLANT_HEADINGS = [
    "Acc. No", "Tag reads", "Believed to be", "Kept by", "Got from", "When", "How acquired", "Parent plant",
    "Holds", "State", "Gone when", "Last seen", "Where at home", "Mount", "Private?", "Remarks",
]  # fmt: skip


def plant_rows(garden: Garden) -> list[list[str]]:
    """The plants' list with its headings, in the order of its numbers."""
    return [PLANT_HEADINGS, *(_row(plant, garden) for plant in garden.plants)]


def _row(plant: Plant, garden: Garden) -> list[str]:
    chance = garden.chance
    mount = chance.one_of(MOUNTS.get(plant.genus, ("pot", "pot", "in the ground", "")))
    return [
        plant.number, plant.tag, plant.believed, _keeper(plant, garden), _source(plant, garden), plant.when,
        chance.one_of(HOW_WORDS[plant.how]), _parent(plant), plant.pot, chance.one_of(STATE_WORDS[plant.state]),
        plant.gone_when, plant.last_seen, "" if plant.keeper == THE_SOCIETY else chance.one_of(PLACES),
        mount, "yes" if plant.private else "", plant.remarks or chance.one_of(REMARKS),
    ]  # fmt: skip


def _keeper(plant: Plant, garden: Garden) -> str:
    first, _, surname = plant.keeper.partition(" ")
    if "household" in plant.keeper or plant.keeper == THE_SOCIETY or garden.chance.happens(0.9):
        return plant.keeper
    return f"{first[0]}. {surname}"


def _source(plant: Plant, garden: Garden) -> str:
    first = plant.source.split(" ")[0]
    of_a_member = plant.parent is not None and first in BY_FIRST and "household" not in plant.source
    return first if of_a_member and garden.chance.happens(0.15) else plant.source


def _parent(plant: Plant) -> str:
    if plant.parent:
        return plant.parent.number
    if plant.sowing:
        return plant.sowing.number
    return plant.parent_words
