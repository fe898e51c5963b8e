"""The schedule of a show: a class a row."""

from __future__ import annotations

from datetime import datetime, time
from typing import TYPE_CHECKING

from django.utils import timezone

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow
from frondkeep.desk.importing.shows import ClassKey, show_key
from frondkeep.desk.importing.values import plain
from frondkeep.shows.models import Show, ShowClass
from frondkeep.society.forms import read_growers_date
from specimens.naming.dates import DateNotRead, PartialDate

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

Stages, Wants = ShowClass.Stages, ShowClass.Wants
STAGES = {
    "": Stages.PLANTS, "plant": Stages.PLANTS, "plants": Stages.PLANTS, "frond": Stages.FRONDS,
    "fronds": Stages.FRONDS, "cut fronds": Stages.FRONDS, "display": Stages.DISPLAY,
    "photograph": Stages.PHOTOGRAPH, "photographs": Stages.PHOTOGRAPH, "photo": Stages.PHOTOGRAPH,
}  # fmt: skip
WANTS = {
    "": Wants.ANY, "any": Wants.ANY, "species": Wants.SPECIES, "hybrid": Wants.HYBRID, "cultivar": Wants.CULTIVAR,
    "named cultivar": Wants.CULTIVAR, "raised from spores": Wants.RAISED,
}  # fmt: skip
CLOSING = time(21)


def declare(raw: RawRow, ledger: Ledger) -> None:
    key = class_key(raw)
    if key is not None:
        ledger.shows.declare(
            key, raw.cells.get("show", ""), STAGES.get(plain(raw.cells.get("stages", "")), Stages.PLANTS)
        )


def class_key(raw: RawRow) -> ClassKey | None:
    number = raw.cells.get("number", "")
    try:
        day = read_growers_date(raw.cells.get("date", ""), future_ok=True).earliest
    except DateNotRead:
        return None
    return (show_key(raw.cells.get("show", ""), day), int(number)) if number.isdecimal() else None


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    number, title = raw.cells.get("number", ""), raw.cells.get("title", "")
    show = raw.cells.get("show", "")
    read = RowReader(
        raw,
        ledger,
        key=f"class:{plain(show)}:{raw.cells.get('date', '')}:{number}",
        title=f"{number} {title}",
    )
    if not number.isdecimal() or not 0 < int(number) < 10_000:
        read.refuse("number", "A class has a number.")
    day, closing = one_day(read, "date"), one_day(read, "closes")
    read.row.values = {
        "show": read.needed("show", most=120),
        "date": day.earliest,
        "closes": closing.earliest or day.earliest,
        "number": int(number) if number.isdecimal() else 0,
        "section": read.text("section", most=120),
        "title": read.needed("title", most=200),
        "stages": read.word("stages", STAGES, otherwise=Stages.PLANTS),
        "wants": wanted(read),
        "genus": read.text("genus", most=120),
        "how_many": how_many(read),
    }
    key = class_key(raw)
    if key is not None:
        read.row.gives.append(("class", class_words(key)))
        if key in ledger.shows.classes and read.row.fate == "new":
            read.found(ledger.shows.classes[key])
    return read.row


def class_words(key: ClassKey) -> str:
    return f"{key[0]}:{key[1]}"


def one_day(read: RowReader, field: str) -> PartialDate:
    """A day to come, or past; a show is held on one day."""
    try:
        day = read_growers_date(read.cell(field), future_ok=True) if read.cell(field) else PartialDate()
    except DateNotRead as problem:
        read.refuse(field, str(problem))
        return PartialDate()
    if not day.is_exact and (field == "date" or day.words):
        read.refuse(field, "This must be one day. Write day, month and year.")
    return day


def wanted(read: RowReader) -> str:
    """What may enter; a wish we hold no rule for stands in the title alone, and is said."""
    said = plain(read.cell("wants"))
    if said not in WANTS:
        read.note(
            f"{read.raw.heading('wants')}: “{read.cell('wants')}” is no rule we check; the committee does."
        )
    return WANTS.get(said, Wants.ANY)


def how_many(read: RowReader) -> int:
    said = read.cell("how_many") or "1"
    if not said.isdecimal() or not 0 < int(said) < 100:
        read.refuse("how_many", "How many plants to an entry? Write a number.")
        return 1
    return int(said)


def write(writing: Writing, row: PlannedRow) -> None:
    values = row.values
    closes = timezone.make_aware(datetime.combine(values["closes"], CLOSING))
    show = Show.objects.get_or_create(
        name=values["show"], date=values["date"], defaults={"entries_close_at": closes}
    )[0]
    kept = {field: values[field] for field in ("number", "section", "title", "stages", "wants", "how_many")}
    genus = writing.known.one("genus", "", values["genus"]) if values["genus"] else None
    ShowClass.objects.create(show=show, genus=genus, **kept)
