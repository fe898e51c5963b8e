"""Sowings and the plants that came of them."""

from collections.abc import Callable
from datetime import date, timedelta
from functools import partial

from demo_data.calendar_words import TODAY, day_between, full_words
from demo_data.cultivars import Cultivar
from demo_data.plants import Garden, Plant, Sowing, member_behind
from demo_data.species import SOLITARY

MEDIA = (
    "peat pellet",
    "milled sphagnum",
    "coir",
    "brick in a box",
    "leaf mould, sterilised",
    "tree fern fibre",
    "",
)
CAME_UP = (
    "about 40, all alike",
    "a dozen",
    "carpet of them",
    "6 or 7",
    "a few",
    "3",
    "20+, some crested",
    "green film, then nothing",
)
MIXED_CAME_UP = (
    "30: most like the first, 2 odd",
    "a dozen, 3 look between",
    "about 50, not sorted",
    "9, one very odd",
)
POT_WORDS = ("several", "several", "pot of 5 seedlings", "several in one pot", "6 seedlings")

Choose = Callable[[Plant], bool]


def sow(garden: Garden) -> None:
    """Sow forty times: alone, mixed, from packets, and again from what had come up."""
    for epithet in (*SOLITARY, *SOLITARY, "wandae", "superbum"):
        _sow_one(garden, partial(_is_of, f"Platycerium {epithet}"))
    for _ in range(6):
        _sow_one(garden, lambda plant: isinstance(plant.kind, str) and plant.how == "outside")
    _sow_one(garden, lambda plant: plant.epithet == "Clerestory")
    for _ in range(7):
        _sow_one(garden, lambda plant: isinstance(plant.kind, Cultivar))
    for count in (2, 2, 2, 3, 2, 2, 3, 2, 2, 4):
        _sow_mixed(garden, count)
    for words in (
        "Platycerium wandae, exchange packet",
        "Adiantum raddianum",
        "P. stemaria + P. alcicorne, swept up",
    ):
        _sow_words(garden, words)
    for _ in range(3):
        _sow_one(garden, lambda plant: plant.sowing is not None and not plant.pot)
    garden.sowings.sort(key=lambda sowing: sowing.sown)
    for place, sowing in enumerate(garden.sowings, start=1):
        sowing.number = f"S{place}"


def _ripe(garden: Garden, wanted: Choose) -> list[Plant]:
    """Return plants of a kind that were old enough to bear spores by 2023."""
    return [p for p in garden.plants if p.species and wanted(p) and p.got < date(2021, 1, 1)]


def _is_of(species: str, plant: Plant) -> bool:
    return plant.kind == species


def _sow_one(garden: Garden, wanted: Choose) -> None:
    _record(garden, [garden.chance.one_of(_ripe(garden, wanted))])


def _sow_mixed(garden: Garden, count: int) -> None:
    genus = "Platycerium" if garden.chance.happens(0.8) else "Athyrium"
    kinds: dict[str, Plant] = {}
    pool = _ripe(garden, lambda plant: plant.genus == genus and not plant.seedling)
    while len(kinds) < count:
        plant = garden.chance.one_of(pool)
        kinds.setdefault(plant.epithet or plant.species, plant)
    _record(garden, list(kinds.values()))


def _sow_words(garden: Garden, words: str) -> None:
    day = day_between(date(2015, 3, 1), date(2022, 6, 1), garden.chance)
    _finish(garden, Sowing("", day, "", garden.someone(day.year), source_words=words), words.split(",")[0])


def _record(garden: Garden, sources: list[Plant]) -> None:
    ripe = max(source.got for source in sources) + timedelta(days=2 * 365)
    day = day_between(max(ripe, date(2006, 1, 1)), max(ripe, date(2023, 3, 1)), garden.chance)
    by = member_behind(sources[0].keeper) or garden.someone(day.year)
    _finish(garden, Sowing("", day, "", by, sources=sources), sources[0].species)


def _finish(garden: Garden, sowing: Sowing, species: str) -> None:
    chance = garden.chance
    sowing.when = full_words(sowing.sown, chance) if chance.happens(0.6) else f"{sowing.sown:%B %Y}"
    sowing.medium = chance.one_of(MEDIA)
    sowing.came_up = chance.one_of(MIXED_CAME_UP if sowing.mixed else CAME_UP)
    sowing.remarks = chance.one_of(
        ("", "", "", "lid off in June", "slow", "moss got in", "half given to the exchange")
    )
    garden.sowings.append(sowing)
    if not sowing.came_up.endswith("nothing"):
        for _ in range(chance.between(2, 5)):
            _prick_out(garden, sowing, species)


def _prick_out(garden: Garden, sowing: Sowing, species: str) -> None:
    chance = garden.chance
    last = min(sowing.sown + timedelta(days=4 * 365), TODAY - timedelta(days=30))
    got = day_between(sowing.sown + timedelta(days=300), last, chance)
    taker = sowing.by if chance.happens(0.4) else garden.someone(got.year)
    source = "own" if taker == sowing.by else sowing.by.name
    kind: Cultivar | str = species if species.count(" ") == 1 else ""
    only = sowing.sources[0].kind if len(sowing.sources) == 1 else ""
    if isinstance(only, Cultivar) and only.comes_true == "s":
        kind = only
    garden.add(kind, "spores", got, garden.keeper_for(taker), source=source, sowing=sowing)


def pot_up_together(garden: Garden, count: int) -> None:
    """Let ``count`` of the sporelings be pots that hold several."""
    free = [
        plant
        for plant in garden.plants
        if plant.sowing and not plant.children and not _sown_from(garden, plant)
    ]
    for plant in garden.chance.some_of(free, count):
        plant.pot = garden.chance.one_of(POT_WORDS)


def _sown_from(garden: Garden, plant: Plant) -> bool:
    return any(plant in sowing.sources for sowing in garden.sowings)


SOWING_HEADINGS = ["Sowing no.", "Sown", "Sown by", "Spores of", "Medium", "What came up", "Remarks"]


def sowing_rows(garden: Garden) -> list[list[str]]:
    """The sowings with their headings; sources by old number, some with their name behind it."""
    rows = [SOWING_HEADINGS]
    for sowing in garden.sowings:
        joint = garden.chance.one_of((" + ", ", ", " and "))
        spores_of = joint.join(_source(source, garden) for source in sowing.sources) or sowing.source_words
        rows.append(
            [
                sowing.number,
                sowing.when,
                sowing.by.name,
                spores_of,
                sowing.medium,
                sowing.came_up,
                sowing.remarks,
            ]
        )
    return rows


def _source(plant: Plant, garden: Garden) -> str:
    if isinstance(plant.kind, Cultivar) and plant.kind.by_division_only and garden.chance.happens(0.25):
        return plant.kind.name  # every plant of the name is the same one
    if garden.chance.happens(0.3):
        return f"{plant.number} ({plant.epithet or plant.species})"
    return plant.number
