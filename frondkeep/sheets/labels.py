"""Plant labels: a code in large figures, the name, a few lines, and a square code to point a phone at."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import segno

from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.label_sheets import LabelSheet, Place
from frondkeep.sheets.press import Data, Refused
from frondkeep.sheets.printing import Say, printed
from frondkeep.sheets.rows import Runs, check_language, check_styles

PADDING = 2.0  # mm, inside each label
SMALLEST_SQUARE = 0.3  # mm a module; common practice for office printers and phones
QUIET_ZONE = 4  # modules on each side, ISO/IEC 18004
_TOO_LITTLE_ROOM = re.compile(r"no room on label (\d+)")


@dataclass(frozen=True, kw_only=True)
class Label:
    """One label.

    Attributes
    ----------
    code
        Printed large, to be copied by hand.
    name_runs
        The plant's name; shrunk or wrapped to fit, never cut short.
    lines
        Further lines, small.
    qr
        What the square code holds, as the address of the plant's page; empty for none.
    """

    code: str
    name_runs: Runs = ()
    lines: tuple[str, ...] = ()
    qr: str = ""

    def __post_init__(self) -> None:
        check_styles(self.name_runs)


def labels_pdf(
    labels: Sequence[Label],
    *,
    sheet: LabelSheet,
    timestamp: datetime | int,
    start: int = 1,
    shift_right: float = 0.0,
    shift_down: float = 0.0,
    outlines: bool = False,
    language: str = "en",
    stand_in: bool = False,
) -> bytes:
    """Return sheets of labels as a tagged PDF of exactly the paper's size, to be printed at 100 %.

    The same labels, sheet and timestamp give the same bytes. `outlines` draws the edges of the labels,
    for a trial on plain paper. For `start` and the shifts see `LabelSheet.places`.

    Raises
    ------
    SheetError
        When something does not fit or cannot be printed, saying which label.
    """
    if not labels:
        raise SheetError("there are no labels to print")
    check_language(language)
    places = list(sheet.places(len(labels), start=start, shift_right=shift_right, shift_down=shift_down))

    def data(say: Say) -> Data:
        set_labels = [
            _label_data(label, place, sheet, say) for label, place in zip(labels, places, strict=True)
        ]
        return {"sheet": _sheet_data(sheet, language, outlines), "labels": set_labels}

    rows = [(f"label {label.code}", _texts(label)) for label in labels]
    try:
        return printed("labels.typ", rows, data, timestamp=timestamp, stand_in=stand_in)
    except Refused as refusal:
        raise _refusal_in_words(str(refusal), labels) from refusal


def _texts(label: Label) -> list[str]:
    return [label.code, "".join(text for text, _ in label.name_runs), *label.lines]


def _sheet_data(sheet: LabelSheet, language: str, outlines: bool) -> Data:
    tag, _, region = language.partition("-")
    return {
        "paper": [sheet.paper_width, sheet.paper_height],
        "label": [sheet.label_width, sheet.label_height],
        "padding": min(PADDING, sheet.label_height / 8, sheet.label_width / 8),
        "outlines": outlines,
        "language": tag.lower(),
        "region": region.upper() or None,
    }


def _label_data(label: Label, place: Place, sheet: LabelSheet, say: Say) -> Data:
    return {
        "page": place.page,
        "x": place.x,
        "y": place.y,
        "code": say(label.code).strip(),
        "name": [[say(text), style] for text, style in label.name_runs],
        "lines": [say(line).strip() for line in label.lines],
        "qr": _square_code(label, sheet) if label.qr else None,
    }


def _square_code(label: Label, sheet: LabelSheet) -> Data:
    """The square code as an SVG without size, and how wide it is printed; its quiet zone is part of it."""
    code = segno.make_qr(label.qr, error="m", boost_error=False)
    modules = code.symbol_size(border=QUIET_ZONE)[0]
    width = min(sheet.label_height, sheet.label_width * 0.45)
    if width / modules < SMALLEST_SQUARE:
        raise SheetError(
            f"the square code needs {modules} × {SMALLEST_SQUARE} = {modules * SMALLEST_SQUARE:.1f} mm,"
            f" but there are {width:.1f} mm; use larger labels or leave it out",
            row=f"label {label.code}",
        )
    return {"svg": code.svg_inline(border=QUIET_ZONE, omitsize=True), "width": width}


def _refusal_in_words(refusal: str, labels: Sequence[Label]) -> SheetError:
    found = _TOO_LITTLE_ROOM.search(refusal)
    if found is None:
        return SheetError(f"the labels could not be set: {refusal.splitlines()[0]}")
    row = f"label {labels[int(found[1])].code}"
    return SheetError("the name and lines do not fit, even in the smallest print; use larger labels", row=row)
