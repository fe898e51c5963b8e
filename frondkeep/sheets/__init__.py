"""Makes paper: frozen rows in, PDF bytes out. Knows no model and imports nothing of the project."""

from frondkeep.sheets.entry_lists import entry_list_pdf, judges_copy_pdf
from frondkeep.sheets.errors import SheetError
from frondkeep.sheets.glyphs import missing_characters
from frondkeep.sheets.label_sheets import A4_21, LabelSheet
from frondkeep.sheets.labels import Label, labels_pdf
from frondkeep.sheets.rows import ClassRows, EntryList, EntryRow

__all__ = [
    "A4_21",
    "ClassRows",
    "EntryList",
    "EntryRow",
    "Label",
    "LabelSheet",
    "SheetError",
    "entry_list_pdf",
    "judges_copy_pdf",
    "labels_pdf",
    "missing_characters",
]
