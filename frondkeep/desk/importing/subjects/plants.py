"""The plants' list: one row a plant, with all its society knows of it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import read_own_sowing
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow
from frondkeep.desk.importing.subjects.origins import Thought, known_name, read_thought
from frondkeep.desk.importing.values import STATES, How, plain, read_holds, read_how, read_yes
from frondkeep.society.models import Keeper
from specimens.models import Came, SeenBy, State
from specimens.naming.codes import Code, CodeNotRead, read_code
from specimens.naming.dates import PartialDate

if TYPE_CHECKING:
    pass

OWN = frozenset({"own", "own sowing", "own collection", "self", "raised here"})
HOWS = "We know: pup, piece, division, sport, from spores, bought, gift, swap, wild, don’t know."


def declare(raw: RawRow, ledger: Ledger) -> None:
    ledger.declare(raw, kind="plant")


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    read = RowReader(raw, ledger, key=plant_key(raw), title=plant_title(raw))
    read.row.gives = [("plant", plain(raw.cells[k])) for k in ("number", "code") if raw.cells.get(k)]
    how = read.read("came", read_how, otherwise=How(Came.NOT_KNOWN), hint=HOWS)
    keeper = read.keeper("keeper")
    label = read.text("label", most=500)
    thought = read_thought(label, read.text("thought", most=300), ledger)
    state = read.word("state", STATES, otherwise=State.GROWING)
    read.row.values = {
        "keeper": raw.cells.get("keeper", "") if keeper else "",
        "label": label,
        "thought": thought,
        "code": code_of(read),
        "origin": origin(read, how, thought, keeper),
        "fields": fields(read, state),
        "acquired": read.day("acquired"),
        "own": plain(raw.cells.get("from_whom", "")) in OWN,
        **giver(read),
    }
    read.row.values["fields"]["notes"] = read.notes()
    note_name(read, thought)
    note_first_plant(read, how, thought, keeper)
    if read.row.fate == "new":
        look_for_record(read)
    return read.row


def plant_key(raw: RawRow) -> str:
    """The code, else the society's number, else the row's content."""
    number = plain(raw.cells.get("code", "")) or plain(raw.cells.get("number", ""))
    return f"number:{number}" if number else raw.fingerprint()


def plant_title(raw: RawRow) -> str:
    cells = raw.cells
    number = cells.get("code", "") or cells.get("number", "")
    return " ".join(filter(None, (number, cells.get("thought", "") or cells.get("label", "")))) or "a plant"


def code_of(read: RowReader) -> Code | None:
    if not read.cell("code"):
        return None
    try:
        return read_code(read.cell("code"))
    except CodeNotRead as problem:
        meant = " or ".join(str(code) for code in problem.did_you_mean)
        read.refuse("code", f"{problem} Did you mean {meant}?" if meant else str(problem))
        return None


def fields(read: RowReader, state: str) -> dict[str, Any]:
    """The specimen's own fields."""
    private = read.read("private", read_yes, otherwise=False, hint="Write yes or no.")
    ended = read.day("ended")
    if state in (State.GROWING, State.LOST) and ended.is_known and state == State.GROWING:
        read.keep_in_notes("ended", why="but the plant is said to be growing")
        ended = PartialDate()
    seen = read.day("last_seen")
    if seen.is_known and not seen.is_exact:
        # It was alive some time within these days; the first of them is sure.
        read.extra.append(f"{read.raw.heading('last_seen')}: {read.cell('last_seen')}")
    return {
        "holds": read_holds(read.cell("holds")),
        "state": str(state),
        "ended": ended,
        "last_seen_alive": seen.earliest,
        "growing_place": read.text("place", most=200),
        "mount": read.text("mount", most=120),
        "society_number": read.text("number", most=40),
        "own_number": read.text("own_number", most=40),
        "seen_by": SeenBy.KEEPER if private else SeenBy.MEMBERS,
        "meeting": read.meeting(),
    }


def giver(read: RowReader) -> dict[str, str]:
    """From whom: a keeper of this society, or words, with how it was obtained."""
    words, how = read.text("from_whom", most=170), read.cell("came")
    obtained = how if plain(how) in ("gift", "swap", "bought", "exchange", "raffle") else ""
    if not words and obtained:
        read.extra.append(f"{read.raw.heading('came')}: {how}")
    if plain(words) in OWN:
        return {"from_keeper": "", "from_words": ""}
    if read.person("from_whom") is not None:
        return {"from_keeper": words, "from_words": ""}
    said = f"{words} ({obtained})" if words and obtained and plain(words) != plain(obtained) else words
    return {"from_keeper": "", "from_words": said}


def origin(read: RowReader, how: How, thought: Thought, keeper: Keeper | None) -> dict[str, Any]:
    """How it came, with the plant, sowing or words it came from."""
    parent = read.reference("parent", kinds=kinds_for(how))
    words = read.text("parent", most=200) if parent is None else ""
    if parent is not None and how.came in (Came.OUTSIDE, Came.NOT_KNOWN):
        how = How(Came.SOWING) if parent[0] == "sowing" else How(Came.PIECE)
    if parent is not None and how.came == Came.PIECE and parent[0] == "sowing":
        read.refuse("parent", "A piece is taken from a plant; this is a sowing. Write “from spores”.")
    own = read_own_sowing(words) if how.came == Came.SOWING else None
    if words and own is None and how.came not in (Came.PIECE, Came.SOWING):
        read.keep_in_notes("parent")
    return {"how": how, "parent": parent, "words": words, "own": own, "genus": genus_of(read, thought)}


def kinds_for(how: How) -> tuple[str, ...]:
    return ("plant", "sowing") if how.came == Came.PIECE else ("sowing", "plant")


def genus_of(read: RowReader, thought: Thought) -> str:
    matched = read.ledger.match(thought.words or read.cell("label"))
    genus = matched.name.genus if matched.name else None
    return genus.epithet if genus else matched.reading.genus


def note_name(read: RowReader, thought: Thought) -> None:
    if thought.words and known_name(thought, read.ledger) is None and " × " not in thought.words:
        read.note(f"“{thought.words}” is no name on record: it is kept as a name not yet checked.")


def note_first_plant(read: RowReader, how: How, thought: Thought, keeper: Keeper | None) -> None:
    """Raised, found or sported at its keeper's, who is the raiser of the name: the first plant of that name."""
    name = known_name(thought, read.ledger)
    first = (
        name is not None
        and name.is_cultivar
        and name.original_plant_id is None
        and keeper is not None
        and read.ledger.people.lives_with(keeper, name.raiser)
        and plain(read.cell("from_whom")) in OWN
        and (how.came == Came.SOWING or how.sport)
        and name.written not in read.ledger.first_plants
    )
    read.row.values["first_plant"] = first
    if first:
        read.ledger.first_plants.add(name.written)
        read.note("Its keeper raised this name: taken as its first plant.")


def look_for_record(read: RowReader) -> None:
    """On record already? By code or number, else by the row's content."""
    values = read.row.values
    number = str(values["code"] or "") or values["fields"]["society_number"] or read.row.key
    found = read.ledger.on_record("plant", number) if not number.startswith("row:") else []
    found = found or read.ledger.records["plant"].get(read.row.key, [])
    if len(found) > 1:
        read.refuse("number", f"{len(found)} plants on record bear this number. Write the plant’s code.")
    elif found:
        compare(read, found[0])


def compare(read: RowReader, found: dict[str, Any]) -> None:
    read.found(found["pk"])
    values = read.row.values
    pairs = {
        "label": (values["label"], found["label_text"]),
        "acquired": (values["acquired"].words, found["acquired_words"]),
    }
    if "mount" in values["fields"]:
        pairs |= {
            "state": (values["fields"]["state"], found["state"]),
            "mount": (values["fields"]["mount"], found["mount"]),
            "own_number": (values["fields"]["own_number"], found["own_number"]),
            "notes": (values["fields"]["notes"], found["notes"]),
        }
    read.differing(pairs)
