"""An invented autumn show, small enough to read."""

from collections.abc import Iterable
from typing import Any

from frondkeep.sheets import ClassRows, EntryList, EntryRow

NOON = 1_794_657_600  # 14 November 2026, 12:00 UTC
HARD = """'quoted' "twice" #hash $sum$ @at \\back *star* _low_ `tick` [box] <tag> // -- ... ~ https://a.example"""


def make_entry(number: int = 1, name: str = "‘Silver Tassel’", **changes: Any) -> EntryRow:
    values: dict[str, Any] = {
        "number": number,
        "name_runs": (("Platycerium", "italic"), (" " + name, "roman")),
        "exhibitor_number": 31,
        "exhibitor": "Ada Quill",
    }
    return EntryRow(**(values | changes))


def make_class(number: int = 1, entries: Iterable[EntryRow] = (), **changes: Any) -> ClassRows:
    values: dict[str, Any] = {"title": "One staghorn fern", "section": "Staghorn ferns"}
    return ClassRows(number=number, entries=tuple(entries), **(values | changes))


def make_list(*classes: ClassRows, **changes: Any) -> EntryList:
    values: dict[str, Any] = {
        "society": "Tidewater Fern Society",
        "show": "Autumn Show",
        "date_words": "Saturday 14 November 2026",
        "venue": "The Old Glasshouse",
        "printed_at": "13 November 2026, 21:04",
    }
    return EntryList(classes=classes, **(values | changes))


def make_long_list(entries: int) -> EntryList:
    """One class that runs over several pages between two short ones."""
    rows = [make_entry(number) for number in range(2, entries + 2)]
    return make_list(
        make_class(1, [make_entry(1)]),
        make_class(2, rows, title="The long class"),
        make_class(3, [make_entry(entries + 2)], title="The last class"),
    )
