"""The sowing book: when, by whom, whose spores, what came up."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import split_sources, without_brackets
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow, Ref, short
from frondkeep.desk.importing.values import DONT_KNOW, plain
from specimens.services.many_plants import NewSowing, record_sowings
from specimens.services.sowings import Source

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

# (reference, name as written, words): whose spores one part of the cell speaks of.
SourceWords = tuple[Ref | None, str, str]


def declare(raw: RawRow, ledger: Ledger) -> None:
    ledger.declare(raw, kind="sowing")


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    number = raw.cells.get("number", "")
    key = f"number:{plain(number)}" if number else raw.fingerprint()
    read = RowReader(raw, ledger, key=key, title=number or f"sowing of {raw.cells.get('sources', '')}"[:80])
    read.row.gives = [("sowing", plain(number))] if number else []
    read.person("by")  # two of one name are asked about
    read.row.values = {
        "sources": sources(read),
        "sown": read.day("sown"),
        "medium": read.text("medium", most=120),
        "came_up": read.text("came_up", most=300),
        "old_number": read.text("number", most=40),
        "label": read.text("sources", most=200),
        "grower": read.text("by", most=120),
    }
    read.row.values["notes"] = read.notes()
    if read.row.fate == "new":
        look_for_record(read, number)
    return read.row


def sources(read: RowReader) -> list[SourceWords]:
    """Each part: a plant, a name, or words. A remark after a comma belongs to the part before it."""
    if not read.cell("sources"):
        read.refuse("sources", "Nothing stands here. Write whose spores, or “not known”.")
    found: list[SourceWords] = []
    genus = ""
    for sign, part in split_sources(read.cell("sources")):
        ref = read.reference_in("sources", part, kinds=("plant",))
        matched = None if ref else read.ledger.match(without_brackets(part), genus=genus).name
        if ref is None and matched is None and sign == "," and found and part[0].islower():
            last = found[-1]
            found[-1] = (last[0], last[1], f"{last[2]}, {part}".strip(", "))
        elif plain(part) not in DONT_KNOW:
            found.append((ref, without_brackets(part) if matched else "", part))
        if matched is not None and matched.genus is not None:
            genus = matched.genus.epithet
    note_words(read, found)
    return found


def note_words(read: RowReader, found: list[SourceWords]) -> None:
    for ref, name, words in found:
        if ref is None and not name:
            read.note(f"“{words}” is neither a plant nor a name on record: kept as a plant not known.")


def look_for_record(read: RowReader, number: str) -> None:
    found = read.ledger.on_record("sowing", number) if number else []
    found = found or read.ledger.records["sowing"].get(read.row.key, [])
    if len(found) > 1:
        read.refuse("number", f"{len(found)} sowings on record bear this number.")
    elif found:
        compare(read, found[0])


def compare(read: RowReader, found: dict[str, Any]) -> None:
    read.found(found["pk"])
    values = read.row.values
    read.differing(
        {
            "sown": (values["sown"].words, found["sown_words"]),
            "medium": (values["medium"], found["medium"]),
            "came_up": (values["came_up"], found["came_up"]),
            "notes": (values["notes"], found["notes"]),
        }
    )


def write(writing: Writing, rows: list[PlannedRow]) -> None:
    made = record_sowings([new_sowing(writing, row) for row in rows], by=writing.by)
    for row, sowing in zip(rows, made, strict=True):
        writing.keep(row, sowing)


def new_sowing(writing: Writing, row: PlannedRow) -> NewSowing:
    fields = dict(row.values)
    sources = written_sources(writing, fields.pop("sources"))
    fields |= {**writing.grower(fields.pop("grower")), "import_key": short(row.key)}
    return NewSowing(sources=sources, fields=fields)


def written_sources(writing: Writing, sources: list[SourceWords]) -> tuple[Source, ...]:
    """A plant named twice is one source."""
    made: list[Source] = []
    for ref, name, words in sources:
        plant = writing.plant(ref) if ref else None
        if plant is None or all(source.specimen != plant for source in made):
            found = writing.name(name)[0] if name else None
            made.append(Source(specimen=plant, name=found, words=words[:200]))
    return tuple(made)
