"""What was put there on purpose: long chains, one plant under two names, riddles."""

from datetime import date

from demo_data.calendar_words import day_in
from demo_data.cultivars import BY_NAME
from demo_data.founders import piece_of
from demo_data.people import BY_FIRST
from demo_data.plants import THE_SOCIETY, Garden, Plant

CHAINS = (
    (
        "Platycerium 'Ballroom Curtain'",
        ("Oswin", 1986),
        ("Jonquil", 1999),
        ("Idris", 2007),
        ("Lotte", 2014),
        ("Ifeoma", 2018),
        ("Kofi", 2022),
    ),
    (
        "Platycerium 'Cold Tea'",
        ("Ottoline", 1992),
        ("Hamish", 2005),
        ("Beatriz", 2017),
        ("Priya", 2019),
        ("Amina", 2021),
    ),
    (
        "Asplenium 'Bent Ruler'",
        ("Mabel", 1986),
        ("Gwenllian", 1997),
        ("Fergal", 2004),
        ("Keiko", 2010),
        ("Yusuf", 2017),
    ),
)

WORDS_FOR_PARENTS = (
    "Ada's big one",
    "the old clump by Bram's door",
    "Hilda's raffle plant",
    "one of Oswin's",
    "the plant in the hall",
    "Mabel's, the one on the cider board",
    "from the show winner 2012",
    "same as Jonquil's",
    "big basket at Sedgeby",
    "Percival's before the frost",
    "Rafael's spare",
    "the committee's bench, left end",
    "Gwenllian's second best",
    "what Anselm had",
)
ODD_TAGS = (
    "",
    "?",
    "stag no. 4",
    "the curly one",
    "ex Dabbs",
    "blue label",
    "P. from Java?",
    "N.N.",
    "unreadable",
    "Dad's",
    "frosty",
    "old gold",
    "big silver",
    "raffle 12",
    "not hillii",
    "crested thing",
)


def divide_on_purpose(garden: Garden) -> None:
    """Lay down the long chains and the pieces that were given another name."""
    for name, *hands in CHAINS:
        plant = oldest(garden, name)
        for first, year in hands:
            plant = piece_of(garden, plant, day_in(year, garden.chance), garden.keeper_for(BY_FIRST[first]))
    _rename(garden, "Platycerium 'Old Tin Roof'", "Platycerium 'Grandmother's Apron'", "Mei-Lin", 2017)
    _rename(garden, "Adiantum 'Green Bonnet'", "Adiantum 'Veranda Queen'", "Leilani", 2014)
    for words in WORDS_FOR_PARENTS:
        _piece_in_words(garden, words)
    for tag in ODD_TAGS:
        _unknown(garden, tag)
    for year in (1989, 1996):
        plant = garden.add(
            "Platycerium bifurcatum",
            "outside",
            day_in(year, garden.chance),
            BY_FIRST["Oswin"].name,
            source="Greenlatch Nursery",
        )
        plant.tag, plant.believed = "P. alcicorne of gardens", "Platycerium bifurcatum"


def oldest(garden: Garden, name: str) -> Plant:
    """Return the first plant of a cultivar."""
    return garden.of(BY_NAME[name], before=date(2026, 1, 1))[0]


def _rename(garden: Garden, old: str, new: str, first: str, year: int) -> Plant:
    piece = piece_of(garden, oldest(garden, old), day_in(year, garden.chance), BY_FIRST[first].name)
    piece.kind = BY_NAME[new]
    piece.tag, piece.believed = BY_NAME[new].epithet, new
    return piece


def _piece_in_words(garden: Garden, words: str) -> None:
    chance = garden.chance
    pool = [plant for plant in garden.plants if plant.pups and plant.epithet and plant.got.year < 2016]
    year = chance.between(2010, 2024)
    garden.add(
        chance.one_of(pool).kind,
        "piece",
        day_in(year, chance),
        garden.keeper_for(garden.someone(year)),
        source=chance.one_of(("", "swap", "a member, forgot who")),
        parent_words=words,
    )


def _unknown(garden: Garden, tag: str) -> None:
    year = garden.chance.between(2001, 2025)
    plant = garden.add(
        "",
        garden.chance.one_of(("unknown", "outside")),
        day_in(year, garden.chance),
        garden.keeper_for(garden.someone(year)),
        source=garden.chance.one_of(("", "raffle")),
    )
    plant.tag, plant.believed = tag, "unknown"


def add_hidden_and_shared(garden: Garden) -> None:
    """Let a handful be private and a few stand on the society's bench."""
    quiet = [plant for plant in garden.plants if plant.keeper != THE_SOCIETY and plant.number]
    for plant in garden.chance.some_of(quiet, 8):
        plant.private = True
    for plant in garden.chance.some_of([p for p in garden.plants if not (p.children or p.numbered)], 6):
        plant.keeper = THE_SOCIETY
