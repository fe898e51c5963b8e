"""Pups and pieces: those in the plants' list, and the book the division table keeps."""

from datetime import date, timedelta

from demo_data.calendar_words import TODAY, day_between, full_words, rough_words
from demo_data.founders import piece_of
from demo_data.meetings import MEETINGS
from demo_data.plants import Garden, Plant
from demo_data.tags import cultivar_tag

CREEPING = ("Davallia", "Drynaria", "Goniophlebium", "Microsorum", "Phlebodium", "Polypodium", "Pyrrosia")
VISITOR = "a visitor"
CHANGES = ("tips crested, unlike its parent", "fronds twice as narrow", "white edge, so far")
WORDS = (
    "Ada's big one",
    "the raffle table plant",
    "Hilda's old clump",
    "no idea, no label",
    "the hall specimen",
)


def spread(garden: Garden, count: int) -> None:
    """Let ``count`` pieces wander to other members, the latest plants as likely parents as the first."""
    last = TODAY - timedelta(days=40)
    for _ in range(count):
        parents = [plant for plant in garden.plants if plant.pups and plant.got < date(2024, 1, 1)]
        parent = garden.chance.one_of(parents)
        got = day_between(parent.got + timedelta(days=500), last, garden.chance)
        taker = garden.someone(got.year, but=parent.keeper)
        piece_of(garden, parent, got, garden.keeper_for(taker))


def keep_division_book(garden: Garden, count: int) -> None:
    """Fill the book of pups and divisions, a quarter of them taken from earlier pieces in it."""
    for day in sorted(_day_of_taking(garden) for _ in range(count)):
        old_enough = day - timedelta(days=420)
        earlier = [piece for piece in garden.pieces if piece.got < old_enough and piece.keeper != VISITOR]
        plants = [plant for plant in garden.plants if plant.pups and plant.got < old_enough]
        pool = earlier if earlier and garden.chance.happens(0.25) else plants
        add_piece(garden, garden.chance.one_of(pool), day)
    _let_some_sport(garden)
    _forget_some_parents(garden)


def _day_of_taking(garden: Garden) -> date:
    if garden.chance.happens(0.6):
        return garden.chance.one_of(MEETINGS).day - timedelta(days=garden.chance.between(0, 20))
    return day_between(date(2018, 6, 1), date(2026, 10, 20), garden.chance)


def _let_some_sport(garden: Garden) -> None:
    named = [piece for piece in garden.pieces if piece.epithet and piece.tip == "pup" and not piece.children]
    for piece, change in zip(garden.chance.some_of(named, len(CHANGES)), CHANGES, strict=True):
        piece.tip, piece.remarks, piece.tag = "pup (sport)", change, f"sport of '{piece.epithet}'"


def _forget_some_parents(garden: Garden) -> None:
    quiet = [piece for piece in garden.pieces if piece.epithet and not piece.children and piece.tip == "pup"]
    for piece, words in zip(garden.chance.some_of(quiet, len(WORDS)), WORDS, strict=True):
        if piece.parent:
            piece.parent.children.remove(piece)
        piece.parent, piece.parent_words = None, words


def add_piece(garden: Garden, parent: Plant, day: date) -> Plant:
    """Write one piece into the book; at a meeting if one followed within six weeks."""
    chance = garden.chance
    meeting = next((m for m in MEETINGS if timedelta(0) <= m.day - day < timedelta(days=42)), None)
    taker = parent.keeper
    if meeting:
        receiver = garden.keeper_for(garden.someone(day.year, but=taker)) if chance.happens(0.85) else VISITOR
    else:
        receiver = garden.keeper_for(garden.someone(day.year)) if chance.happens(0.4) else ""
    when = full_words(day, chance) if chance.happens(0.6) else rough_words(day, chance)
    piece = Plant(
        parent.kind,
        "piece",
        day,
        when,
        receiver or taker,
        parent=parent,
        tip=kind_of_piece(parent, garden),
        taken_by=taker,
        meeting=meeting.name if meeting else "",
    )
    piece.tag = _tag(parent, garden)
    parent.children.append(piece)
    garden.pieces.append(piece)
    return piece


def kind_of_piece(parent: Plant, garden: Garden) -> str:
    """Return how a piece of such a fern is taken."""
    if parent.genus == "Platycerium":
        return "pup"
    if parent.genus in CREEPING:
        return "rhizome piece"
    if parent.genus == "Asplenium" and garden.chance.happens(0.3):
        return "bulbil"
    return garden.chance.one_of(("crown division", "crown division", "rhizome piece"))


def _tag(parent: Plant, garden: Garden) -> str:
    if parent.seedling:
        return parent.tag
    if isinstance(parent.kind, str):
        return parent.believed or parent.kind
    return (
        f"{parent.genus} '{parent.epithet}'"
        if garden.chance.happens(0.6)
        else cultivar_tag(parent.kind, garden.chance)
    )


PIECE_HEADINGS = [
    "No.",
    "Pup of",
    "Kind",
    "Taken",
    "Taken by",
    "Given to",
    "At which meeting",
    "Tag",
    "Remarks",
]


def piece_rows(garden: Garden) -> list[list[str]]:
    """The book of pups and divisions with its headings."""
    rows = [PIECE_HEADINGS]
    for piece in garden.pieces:
        given_to = "" if piece.keeper == piece.taken_by else piece.keeper
        pup_of = piece.parent.number if piece.parent else piece.parent_words
        rows.append(
            [
                piece.number,
                pup_of,
                piece.tip,
                piece.when,
                piece.taken_by,
                given_to,
                piece.meeting,
                piece.tag,
                piece.remarks,
            ]
        )
    return rows
