"""The division book: pups and pieces taken from plants, and who got them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import SPORT
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow
from frondkeep.desk.importing.subjects.origins import Thought, known_name, names_nothing
from frondkeep.desk.importing.subjects.plants import look_for_record, plant_key
from frondkeep.desk.importing.values import How, read_how
from specimens.models import Came, Name, Specimen, State
from specimens.services.many_plants import NewPlant, log_specimens
from specimens.services.specimens import PieceOf

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

KINDS = (
    "We know: pup, offset, crown division, rhizome piece, bulbil, tissue culture, piece, each with (sport)."
)


def declare(raw: RawRow, ledger: Ledger) -> None:
    ledger.declare(raw, kind="plant")


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    title = " ".join(filter(None, (raw.cells.get("number", ""), raw.cells.get("label", "")))) or "a piece"
    read = RowReader(raw, ledger, key=plant_key(raw), title=title)
    read.row.gives = [("plant", raw.cells["number"].casefold())] if raw.cells.get("number") else []
    how = read.read("piece_kind", read_piece, otherwise=How(Came.PIECE), hint=KINDS)
    label = read.text("label", most=500)
    parent = read.reference("parent", kinds=("plant",))
    read.needed("parent", most=200)
    read.row.values = {
        "how": how,
        "label": label,
        "code": None,
        "parent": parent,
        "parent_words": read.text("parent", most=200) if parent is None else "",
        "acquired": read.day("acquired"),
        "thought": thought_of(label, ledger),
        "fields": {"society_number": read.text("number", most=40), "meeting": read.meeting()},
        **hands(read),
    }
    read.row.values["fields"]["notes"] = read.notes()
    if read.row.fate == "new":
        look_for_record(read)
    return read.row


def read_piece(words: str) -> How | None:
    how = read_how(words)
    if how is not None and how.came == Came.NOT_KNOWN:
        return How(Came.PIECE)
    return how if how is not None and how.came == Came.PIECE else None


def thought_of(label: str, ledger: Ledger) -> Thought:
    """The tag's name if it is one we know; else the piece bears its parent's name."""
    thought = Thought(label)
    if names_nothing(label, ledger) or SPORT.match(label) or known_name(thought, ledger) is None:
        return Thought()
    return thought


def hands(read: RowReader) -> dict[str, Any]:
    """Who took it and who has it: given to nobody it stays with the taker, to a stranger it left the society."""
    taker = read.keeper("taken_by")
    receiver = read.person("keeper")
    words = read.cell("keeper")
    near = read.ledger.people.near(words) if words and receiver is None else []
    if near and read.row.fate == "new":
        read.refuse("keeper", f"Nobody of this name is a member. Did you mean {' or '.join(near)}?")
    left = bool(words) and receiver is None
    if left:
        read.note(f"“{words}” is no member: the piece left the society.")
    taker_words = read.cell("taken_by") if taker else ""
    return {
        "taker": taker_words,
        "keeper": taker_words if left or not words else words,
        "given": taker_words if words and not left else "",
        "left": f"given to {words}" if left else "",
    }


def write(writing: Writing, rows: list[PlannedRow]) -> None:
    made = log_specimens([new_piece(writing, row) for row in rows], by=writing.by)
    for row, piece in zip(rows, made, strict=True):
        writing.keep(row, piece)


def new_piece(writing: Writing, row: PlannedRow) -> NewPlant:
    values, how = row.values, row.values["how"]
    parent = writing.plant(values["parent"]) if values["parent"] else None
    name, qualifier, ground = named_piece(writing, values, parent)
    taker = writing.keeper(values["taker"])
    member = taker.member if taker else None
    changed = values["label"][:200] if how.sport else ""
    return NewPlant(
        keeper=writing.keeper(values["keeper"]), came=Came.PIECE, label_text=values["label"], name=name,
        qualifier=qualifier, ground=ground, acquired=values["acquired"],
        piece_of=PieceOf(parent, values["parent_words"], how.piece, how.sport, changed, by=member),
        fields={
            **values["fields"], **state_of(values, parent), "import_key": row.key,
            "from_keeper": writing.keeper(values["given"]),
            "meeting": writing.meeting(values["fields"]["meeting"]),
        },
    )  # fmt: skip


def named_piece(
    writing: Writing, values: dict[str, Any], parent: Specimen | None
) -> tuple[Name | None, str, str]:
    """A sport bears no name yet beyond its species; a piece its tag's name, else its parent's."""
    current = parent.identification if parent else None
    if values["thought"].words:
        name, qualifier = writing.name(values["thought"].words)
        return name, qualifier, "label"
    if current is None or current.name is None:
        return None, "", "label"
    if values["how"].sport and current.name.is_cultivar:
        return current.name.parent, current.qualifier, "looks"
    return current.name, current.qualifier, current.ground


def state_of(values: dict[str, Any], parent: Specimen | None) -> dict[str, Any]:
    """A piece of a pot of several is as mixed as the pot; who hides a plant hides its pieces."""
    shared = {"holds": parent.holds, "seen_by": parent.seen_by} if parent else {}
    if not values["left"]:
        return shared
    return {**shared, "state": State.LEFT, "state_reason": values["left"], "ended": values["acquired"]}
