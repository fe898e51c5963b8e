"""The crosses book: what was crossed or noticed, what it is called, what was thought before."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.ledger import Ledger
from frondkeep.desk.importing.phrases import Descent, read_descent
from frondkeep.desk.importing.reader import RowReader
from frondkeep.desk.importing.rows import PlannedRow, RawRow, Ref, short
from frondkeep.desk.importing.values import CROSSES, GROUNDS, plain
from frondkeep.society.models import Member
from specimens.models import Cross, Name, ParentageClaim, Specimen
from specimens.services.claims import claim_parentage
from specimens.services.sowings import Source, record_cross

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

# A parent as the sheet has it: a plant, or words that name it.
ParentWords = tuple[Ref | None, str]


def declare(raw: RawRow, ledger: Ledger) -> None:
    """Nothing refers to a cross by its number."""


def plan(raw: RawRow, ledger: Ledger) -> PlannedRow:
    number = raw.cells.get("number", "")
    key = short(f"cross:{plain(number)}") if number else raw.fingerprint()
    title = f"{number} {raw.cells.get('first', '')} × {raw.cells.get('second', '')}".strip()
    read = RowReader(raw, ledger, key=key, title=title)
    parents = [parent(read, "first"), parent(read, "second")]
    read.person("by")  # two of one name are asked about
    values = {
        "parents": parents,
        "how": read.word("how", CROSSES, otherwise=Cross.How.NOTICED),
        "egg": egg(read),
        "made": read.day("made"),
        "grower": read.text("by", most=120),
        "sowing": read.reference("sowing", kinds=("sowing",)),
        "result": result(read),
        "ground": read.word("ground", GROUNDS, otherwise=ParentageClaim.Ground.RECORD),
        "formerly": formerly(read),
        "changed": read.day("changed"),
        "label": read.text("number", most=120),
    }
    read.row.values = {**values, "notes": read.notes()}
    if key in ledger.crosses and read.row.fate == "new":
        compare(read, ledger.crosses[key])
    return read.row


def parent(read: RowReader, field: str) -> ParentWords:
    words = read.needed(field, most=200)
    ref = read.reference(field, kinds=("plant",))
    if words and ref is None and read.ledger.match(words).name is None:
        read.refuse(field, "This is neither a plant nor a name on record. Add the name first.")
    return ref, words


def egg(read: RowReader) -> int | None:
    """1 or 2 where the egg parent is written as one of the two."""
    words = plain(read.cell("egg"))
    if not words:
        return None
    for place, field in enumerate(("first", "second"), 1):
        if words == plain(read.cell(field)) or words == str(place) or words == field:
            return place
    read.refuse("egg", "This is neither of the two parents. Write it as it stands there.")
    return None


def result(read: RowReader) -> ParentWords:
    """What it became: a plant, or a name."""
    words = read.text("result", most=200)
    ref = read.reference("result", kinds=("plant",))
    if words and ref is None and read.ledger.match(words).name is None:
        read.refuse("result", "This is neither a plant nor a name on record. Add the name first.")
    return ref, words


def formerly(read: RowReader) -> Descent | None:
    """What was thought before; words that say no descent go to the notes."""
    words = read.text("formerly", most=200)
    found = read_descent(resolved_places(words, read)) if words else None
    if words and found is None:
        read.keep_in_notes("formerly", why="we read no parents in this")
    return found


def resolved_places(words: str, read: RowReader) -> str:
    """“a self of the first parent” with the parent's own words."""
    said = plain(words)
    for place, field in (("first", "first"), ("second", "second")):
        if said in (f"a self of the {place} parent", f"self of the {place} parent", f"{place} parent selfed"):
            return f"{read.cell(field)} selfed"
    return words


def compare(read: RowReader, found: Cross) -> None:
    read.found(found.pk)
    values = read.row.values
    read.differing(
        {
            "how": (str(values["how"]), found.how),
            "made": (values["made"].words, found.made_words),
            "egg": (values["egg"], found.egg_parent),
            "notes": (values["notes"], found.notes),
        }
    )


def write(writing: Writing, row: PlannedRow) -> None:
    values = row.values
    first, second = (source_of(writing, words) for words in values["parents"])
    about = subject(writing, values["result"])
    grower = writing.grower(values["grower"])
    record_cross(
        first=first, second=second, how=values["how"], egg_parent=values["egg"], made=values["made"],
        label=values["label"],
        result=about if isinstance(about, Name) else None, notes=values["notes"], import_key=short(row.key), **grower,
    )  # fmt: skip
    if about is not None:
        claims(writing, row, about, (first, second))


def source_of(writing: Writing, parent: ParentWords, *, genus: str = "") -> Source:
    ref, words = parent
    if ref is not None:
        return Source(specimen=writing.plant(ref))
    return Source(name=writing.name(words, genus=genus)[0], words=words)


def subject(writing: Writing, result: ParentWords) -> Specimen | Name | None:
    """What the claim is about: the plant, or the name — and of a name here since its first plant, that plant."""
    ref, words = result
    if ref is not None:
        return writing.plant(ref)
    name = writing.name(words)[0] if words else None
    return name.original_plant if name is not None and name.original_plant_id else name


def claims(writing: Writing, row: PlannedRow, about: Specimen | Name, parents: tuple[Source, Source]) -> None:
    """First what was formerly thought, then what stands now: both are kept, with their dates."""
    values = row.values
    grower = writing.grower(values["grower"])
    member = grower["by"] if isinstance(grower["by"], Member) else None
    # A member is named only as each reader may see them, never in words.
    said: dict[str, Any] = {
        "by": (member.user if member else None) or writing.by,
        "by_words": grower["by_words"],
    }
    if values["formerly"]:
        former: Descent = values["formerly"]
        earlier = tuple(former_source(writing, words, about) for words in former.parents)
        if not stands_already(about, former.says, earlier):
            claim_parentage(
                about, says=former.says, parents=earlier, ground="looks", made=values["made"], **said,
                import_key=short(f"former:{row.key}"),
            )  # fmt: skip
    if not stands_already(about, "cross", parents, egg=values["egg"], ground=values["ground"]):
        claim_parentage(
            about, says="cross", parents=parents, ground=values["ground"], egg_parent=values["egg"],
            made=values["changed"] if values["formerly"] else values["made"], source=values["label"],
            superseding_because=values["notes"][:300], import_key=short(f"claim:{row.key}"), **said,
        )  # fmt: skip


def former_source(writing: Writing, words: str, about: Specimen | Name) -> Source:
    """A parent in words of what was formerly thought, a plant by its number or a name of the same genus."""
    ref = ("plant", plain(words))
    if ref in writing.made or ref[1] in writing.numbers("plant", Specimen):
        return Source(specimen=writing.plant(ref))
    name = about if isinstance(about, Name) else (about.identification and about.identification.name)
    genus = name.genus.epithet if name and name.genus else ""
    return Source(name=writing.name(words, genus=genus)[0], words=words)


def stands_already(
    about: Specimen | Name,
    says: str,
    parents: tuple[Source, ...],
    *,
    egg: int | None = None,
    ground: str = "",
) -> bool:
    """Whether the standing claim says this: the same parents, whatever their order, on no lesser ground."""
    found = about.claims.filter(standing="current").first()
    if found is None or found.says != says or egg is not None or (ground and ground != found.ground):
        return False
    there = sorted((parent.specimen_id or 0, parent.name_id or 0) for parent in found.parents.all())
    here = sorted((p.specimen.pk if p.specimen else 0, p.name.pk if p.name else 0) for p in parents)
    return there == here
