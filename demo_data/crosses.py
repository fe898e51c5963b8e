"""Crosses: made on purpose, noticed in mixed sowings, come by chance."""

from demo_data.cultivars import CULTIVARS
from demo_data.people import BY_FIRST
from demo_data.plants import Garden, Plant, Sowing
from demo_data.spreadsheets import Row

HEADINGS = [
    "No.", "How it came about", "Sowing", "One parent", "Other parent", "Egg parent", "When", "Noticed by", "Became",
    "How known", "Formerly thought", "Changed", "Remarks",
]  # fmt: skip

# how | one parent | other parent | egg parent (1, 2) | when | by | became | how known | formerly | changed | remarks
_NAMED = """
intended|Platycerium veitchii|Platycerium hillii|1|1996|Ada|Kettle Steam|grower's record|||
intended|Clerestory|Platycerium hillii|1|2001|Ada|Drowned Steeple|grower's record|||
intended|Platycerium coronarium|Platycerium ridleyi||2009|Rafael|Chapel Bell|grower's record|||both pans kept apart
intended|Ironmonger|Cold Tea||c. 2007|Bram|Pepperpot Lodge|grower's record|||
mixed sowing|Platycerium superbum|Platycerium bifurcatum||2010|Rafael|Cloud over Barrowdene|DNA\
|superbum x willinckii|March 2023|the old guess was from its looks
chance|Platycerium andinum|Platycerium alcicorne||2012|Tomasz|Half a Crown|looks|||stray spores in an andinum pan
mixed sowing|Platycerium elephantotis|Platycerium stemaria||summer 2013|Idris|Slate Quarry Sunday|looks|||
chance|Mackerel Sky|Athyrium filix-femina|1|2021|Sigrid|Pewter Spoon Drawer|DNA\
|'Mackerel Sky' selfed|2024|plastid test gave the egg parent
"""

# how known | formerly thought | changed | remarks: one for each cross noticed in a mixed sowing of ours
_IN_OUR_PANS = """
looks|||shields like the first, forks like the second
DNA|a self of the first parent|June 2025|sent to the university twice
looks|||nobody else is sure
DNA|unknown|autumn 2024|
"""


def cross_rows(garden: Garden) -> list[Row]:
    """The crosses with their headings; call it when plants and sowings have their numbers."""
    rows: list[Row] = [_named_cross(line) for line in _NAMED.strip().splitlines()]
    known = [line.split("|") for line in _IN_OUR_PANS.strip().splitlines()]
    for (sowing, plant), grounds in zip(_noticed(garden), known, strict=False):
        first, second = sowing.sources[:2]
        egg = first.number if grounds[0] == "DNA" else ""
        rows.append(
            [
                "mixed sowing",
                sowing.number,
                first.number,
                second.named if second.cultivar else second.number,
                egg,
                plant.when,
                sowing.by.name,
                plant.number,
                *grounds,
            ]
        )
    return [HEADINGS, *([f"X{place}", *row] for place, row in enumerate(rows, start=1))]


def _named_cross(line: str) -> Row:
    how, one, other, egg, when, first, became, *grounds = line.split("|")
    parents = (_full_name(one), _full_name(other))
    egg_parent = parents[int(egg) - 1] if egg else ""
    return [how, "", *parents, egg_parent, when, BY_FIRST[first].name, _full_name(became), *grounds]


def _full_name(words: str) -> str:
    """Return the full name of a cultivar given by its epithet; a species is given in full."""
    return next((cultivar.name for cultivar in CULTIVARS if cultivar.epithet == words), words)


def _noticed(garden: Garden) -> list[tuple[Sowing, Plant]]:
    """Return mixed sowings, each with a numbered sporeling of it, oldest first."""
    found = []
    for sowing in garden.sowings:
        raised = [p for p in garden.plants if p.sowing is sowing and p.number and not p.pot]
        if len(sowing.sources) > 1 and raised:
            found.append((sowing, raised[0]))
    return found
