"""The plants every line starts with: raised, bought, collected."""

from datetime import date

from demo_data.calendar_words import day_in
from demo_data.cultivars import BY_NAME, CULTIVARS, Cultivar
from demo_data.people import PEOPLE, Person
from demo_data.planted import planted_pairs
from demo_data.plants import THE_SOCIETY, Garden, Plant
from demo_data.species import SPECIES

NURSERIES = ("Greenlatch Nursery", "Widdershins Exotics", "Ferrantine", "Cobbledick & Daughters")
OUTSIDE = (
    *NURSERIES,
    "raffle",
    "a visitor",
    "exchange with a society abroad",
    "estate of the late Mr Dabbs",
    "",
)
WILD_PLACES = (
    "hedge",
    "wood",
    "wall",
    "cliff",
    "lane",
    "farm",
    "fen",
    "railway",
    "ditch",
    "barn roof",
    "well-head",
)
WILD = {
    "Polypodium cambricum",
    "Polypodium vulgare",
    "Asplenium scolopendrium",
    "Asplenium trichomanes",
    "Athyrium filix-femina",
    "Dryopteris affinis",
    "Dryopteris filix-mas",
}

# A second name of these pairs hangs on a recorded piece of the first: told in special_cases.
NAMED_ON_A_PIECE = ("Grandmother's Apron", "Thursday's Find", "Veranda Queen")


def plant_founders(garden: Garden) -> None:
    """Plant the first of every cultivar in order of age, then the species."""
    for cultivar in sorted(CULTIVARS, key=_first_year):
        if cultivar.epithet not in NAMED_ON_A_PIECE:
            _first_plant(garden, cultivar)
    for cultivar in CULTIVARS:
        if cultivar.comes_true == "s":
            _bought(garden, cultivar, _first_year(cultivar) + garden.chance.between(2, 9))
    for species in SPECIES:
        for _ in range(4 if species.startswith("Platycerium") else 3):
            _species(garden, species)


def _first_year(cultivar: Cultivar) -> int:
    return cultivar.year or max(_twin_year(cultivar), 1996) + 6


def _twin_year(cultivar: Cultivar) -> int:
    return max((BY_NAME[a].year or 0 for a, b, *_ in planted_pairs() if b == cultivar.name), default=0)


def _raiser(cultivar: Cultivar) -> Person | None:
    return next((person for person in PEOPLE if person.name == cultivar.raiser), None)


def _first_plant(garden: Garden, cultivar: Cultivar) -> None:
    raiser, year = _raiser(cultivar), _first_year(cultivar)
    second_name = any(b == cultivar.name for _, b, _, same, *_ in planted_pairs() if same == "1")
    if raiser is None or second_name:
        _bought(garden, cultivar, max(year + garden.chance.between(0, 6), 1982))
    elif cultivar.parents.startswith("sport of '"):
        _sport(garden, cultivar, raiser, year)
    elif cultivar.parents:
        garden.add(
            cultivar,
            "spores",
            day_in(year - 1, garden.chance),
            garden.keeper_for(raiser),
            source="own",
            parent_words=f"own sowing, {cultivar.parents}",
        )
    else:
        how = "wild" if any(word in cultivar.origin for word in WILD_PLACES) else "outside"
        garden.add(
            cultivar, how, day_in(year - 1, garden.chance), garden.keeper_for(raiser), source=cultivar.origin
        )


def _sport(garden: Garden, cultivar: Cultivar, raiser: Person, year: int) -> None:
    epithet = cultivar.parents.removeprefix("sport of ")
    parent_kind = BY_NAME[f"{cultivar.genus} {epithet}"]
    keeper = garden.keeper_for(raiser)
    before = date(year - 2, 1, 1)
    known = garden.of(parent_kind, before=before)
    own = [plant for plant in known if plant.keeper == keeper]
    if own:
        mother = own[0]
    elif known:
        mother = piece_of(garden, garden.chance.one_of(known), day_in(year - 2, garden.chance), keeper)
    else:
        mother = garden.add(
            parent_kind,
            "outside",
            day_in(year - 3, garden.chance),
            keeper,
            source=garden.chance.one_of(NURSERIES),
        )
    garden.add(
        cultivar,
        "sport",
        day_in(year, garden.chance),
        keeper,
        parent=mother,
        source="own",
        remarks=f"sported from {cultivar.parents.removeprefix('sport of ')}",
    )


def _bought(garden: Garden, kind: Cultivar | str, year: int) -> Plant:
    year = min(year, 2026)
    keeper = garden.keeper_for(garden.someone(year))
    if garden.chance.happens(0.05):
        keeper = THE_SOCIETY
    return garden.add(
        kind, "outside", day_in(year, garden.chance), keeper, source=garden.chance.one_of(OUTSIDE)
    )


def _species(garden: Garden, species: str) -> None:
    year = garden.chance.between(1990, 2024)
    plant = _bought(garden, species, year)
    if species in WILD and garden.chance.happens(0.4):
        plant.how, plant.source = (
            "wild",
            garden.chance.one_of(("Harthollow lane", "Sedgeby quarry", "with permission")),
        )
    elif garden.chance.happens(0.08):
        plant.how, plant.source = "unknown", ""


def piece_of(garden: Garden, parent: Plant, got: date, keeper: str, **more: object) -> Plant:
    """Plant a pup or piece of ``parent`` with ``keeper``; it comes from the parent's keeper."""
    source = "own" if keeper == parent.keeper else parent.keeper
    return garden.add(parent.kind, "piece", got, keeper, parent=parent, **({"source": source} | more))
