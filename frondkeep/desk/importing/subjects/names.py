"""The list of names: cultivars with raiser, parents, reproduction and traits; species where they are listed."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.kinds import TRAIT_FIELDS
from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import Descent, read_descent
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow, short
from frondkeep.desk.importing.values import DONT_KNOW, REPRODUCTION, plain, read_trait
from lineage.core.lookalikes import NameReading
from specimens.models import Name, Rank, Reproduction
from specimens.services.many_names import NewClaim, add_names, claim_parentage_of_many, record_traits_of_many
from specimens.services.names import add_name, genus_named
from specimens.services.sowings import Source

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

SOURCE = "the society’s list of names"
OWN_FIELDS = ("author", "raiser", "introduced", "reproduction", "origin", "notes")


def declare(raw: RawRow, ledger: Ledger) -> None:
    """Stand-ins for the names to come, so that labels in other sheets are known to mean them."""
    reading = reading_of(raw, ledger)
    if (reading.epithet or reading.species) and not ledger.name_as_written(
        raw.cells["name"], genus=reading.genus
    ):
        ledger.add_name(stand_in(raw, reading, ledger))


def stand_in(raw: RawRow, reading: NameReading, ledger: Ledger) -> Name:
    genus = ledger.genus(reading.genus)
    species = raw.cells.get("species", "") or reading.species
    parent = (
        ledger.names.one("species", reading.genus, species) if species and reading.epithet else None
    ) or genus
    rank = Rank.CULTIVAR if reading.epithet else Rank.SPECIES
    epithet = reading.epithet or reading.species
    return Name(
        rank=rank, epithet=epithet, parent=parent, genus=genus, written=f"{reading.genus} {epithet}",
        raiser=raw.cells.get("raiser", ""),
    )  # fmt: skip


def reading_of(raw: RawRow, ledger: Ledger) -> NameReading:
    return ledger.match(raw.cells.get("name", ""), genus=raw.cells.get("genus", "")).reading


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    reading = reading_of(raw, ledger)
    epithet = reading.epithet or reading.species
    key = f"name:{reading.genus.casefold()}:{ledger.names.word(epithet, written=True) if epithet else ''}"
    read = RowReader(raw, ledger, key=key, title=raw.cells.get("name", ""))
    check_reading(read, reading)
    read.row.values = {
        "genus": reading.genus,
        "species": (plain(raw.cells.get("species", "")) and raw.cells["species"].strip()) or reading.species,
        "group": reading.group,
        "epithet": reading.epithet,
        "author": read.text("author", most=120),
        "raiser": read.text("raiser", most=120),
        "introduced": read.day("introduced"),
        "reproduction": reproduction(read),
        "origin": raw.cells.get("origin", ""),
        "traits": traits(read),
        "descent": descent(read, reading.genus),
    }
    read.row.values["notes"] = read.notes()
    found = ledger.name_as_written(raw.cells.get("name", ""), genus=reading.genus)
    if found is not None and found.pk and read.row.fate == "new":
        compare(read, found)
    return read.row


def check_reading(read: RowReader, reading: NameReading) -> None:
    if not reading.epithet and not reading.species:
        read.refuse("name", "We cannot read a cultivar or a species in this. Put the cultivar in quotes.")
    elif not reading.genus:
        read.refuse("name", "The genus is missing. Write it out, or fill in the genus column.")


def reproduction(read: RowReader) -> str:
    said = plain(read.cell("reproduction"))
    if said in DONT_KNOW:
        return str(Reproduction.NOT_KNOWN)
    return str(read.word("reproduction", REPRODUCTION, otherwise=Reproduction.NOT_KNOWN))


def traits(read: RowReader) -> dict[str, str]:
    """Trait → state; a state we do not know is kept in the notes."""
    found = {}
    for field in TRAIT_FIELDS:
        if read.cell(field.key):
            state = read_trait(field.key, read.cell(field.key), read.ledger.states)
            if state is None:
                read.keep_in_notes(field.key, why="not among the words we know for it")
            else:
                found[field.key] = state
    return found


def descent(read: RowReader, genus: str) -> Descent | None:
    """The parents, if every one of them is a name on record or in the sheets; else the words go to the notes."""
    words = read.cell("parents")
    found = read_descent(words) if words else None
    known = found and all(read.ledger.match(parent, genus=genus).name for parent in found.parents)
    if words and not known:
        read.keep_in_notes("parents", why="we know no names in this")
    return found if known else None


def compare(read: RowReader, found: Name) -> None:
    read.found(found.pk)
    values = read.row.values
    read.differing(
        {
            "raiser": (values["raiser"], found.raiser),
            "introduced": (values["introduced"].words, found.introduced_words),
            "reproduction": (values["reproduction"], found.reproduction),
            "origin": (values["origin"], found.origin),
            "notes": (values["notes"], found.notes),
        }
    )


def write(writing: Writing, rows: list[PlannedRow]) -> None:
    """Species first, where a list brings new ones; then all cultivars at once, then their traits."""
    cultivars = []
    for row in rows:
        above = species_or_genus(writing, row.values)
        name = new_cultivar(writing, row.values, above) if row.values["epithet"] else above
        cultivars += [name] if name is not above else []
        writing.written[id(row)] = name
    add_names(cultivars, by=writing.by)
    for name in cultivars:
        writing.known.add(name)
    states = [(name, row.values["traits"]) for row in rows if (name := writing.written[id(row)]) in cultivars]
    record_traits_of_many(states, source=SOURCE, by=writing.by)


def new_cultivar(writing: Writing, values: dict[str, Any], parent: Name) -> Name:
    return Name(
        rank=Rank.CULTIVAR,
        epithet=values["epithet"],
        parent=parent,
        group=group_of(writing, values),
        **{key: values[key] for key in OWN_FIELDS},
    )


def species_or_genus(writing: Writing, values: dict[str, Any]) -> Name:
    """The species a cultivar stands under, added where the sheet names one that is new; else its genus."""
    genus = genus_named(values["genus"], by=writing.by)
    if genus not in writing.known.by_key.get(("=genus", "", genus.epithet.casefold()), []):
        writing.known.add(genus)
    if not values["species"]:
        return genus
    found = writing.known.one("species", values["genus"], values["species"])
    if found is None:
        found = add_name(
            rank=Rank.SPECIES, epithet=values["species"], parent=genus, by=writing.by, checked=False
        )
        writing.known.add(found)
    return found


def group_of(writing: Writing, values: dict[str, Any]) -> Name | None:
    if not values["group"]:
        return None
    genus = genus_named(values["genus"], by=writing.by)
    found = (
        Name.objects.standing().filter(rank=Rank.GROUP, parent=genus, epithet__iexact=values["group"]).first()
    )
    return found or add_name(rank=Rank.GROUP, epithet=values["group"], parent=genus, by=writing.by)


def claim(writing: Writing, rows: list[PlannedRow]) -> None:
    """The parents the list gives, as claims about the names."""
    claims = [new_claim(writing, row) for row in rows if row.values["descent"]]
    claim_parentage_of_many(claims, by=writing.by)


def new_claim(writing: Writing, row: PlannedRow) -> NewClaim:
    values, name = row.values, writing.written[id(row)]
    parents = tuple(
        Source(name=writing.name(words, genus=values["genus"])[0], words=words[:200])
        for words in values["descent"].parents
    )
    told = {"by_words": values["raiser"], "made": values["introduced"], "source": SOURCE}
    return NewClaim(
        about=name, says=values["descent"].says, parents=parents, ground="record",
        fields={**told, "import_key": short(f"list:{row.key}")},
    )  # fmt: skip
