"""Files for an import, and how each sheet's columns are to be understood."""

from __future__ import annotations

from typing import Any

from django import forms
from django.core.files.uploadedfile import UploadedFile

from frondkeep.desk.importing.intake import FileRefusedError, Sheet, read_file
from frondkeep.desk.importing.kinds import KINDS
from frondkeep.desk.importing.registry import SUBJECTS
from frondkeep.desk.models import ImportSheet

MOST_FILES = 12
SAMPLES = 3


class SeveralFiles(forms.ClearableFileInput):
    allow_multiple_selected = True


class SeveralFilesField(forms.FileField):
    """One or several files, each read and guarded; cleaned to their sheets."""

    widget = SeveralFiles

    def clean(self, data: Any, initial: Any = None) -> list[Sheet]:
        files = data if isinstance(data, list | tuple) else [data] if data else []
        if not files:
            raise forms.ValidationError("Choose one or several files.")
        if len(files) > MOST_FILES:
            raise forms.ValidationError(f"Send at most {MOST_FILES} files at a time.")
        refused, sheets = [], []
        for file in files:
            try:
                sheets += self.sheets_of(file)
            except FileRefusedError as problem:
                refused.append(str(problem))
        if refused:
            raise forms.ValidationError(refused)
        return sheets

    def sheets_of(self, file: UploadedFile) -> list[Sheet]:
        return read_file(file.name or "file", file.read())


class FilesForm(forms.Form):
    files = SeveralFilesField(
        label="Spreadsheets",
        help_text="CSV or XLSX, each up to 10 MB. Choose all that belong together.",
    )


class SheetForm(forms.Form):
    """What one sheet is about, where its headings stand, and what each column holds."""

    kind = forms.ChoiceField(label="This sheet lists", required=False)
    heading_row = forms.IntegerField(label="The headings stand in row", min_value=1, max_value=200)

    def __init__(self, *args: Any, sheet: ImportSheet, **kwargs: Any) -> None:
        self.sheet = sheet
        super().__init__(*args, prefix=f"sheet-{sheet.place}", **kwargs)
        kinds = [(key, KINDS[key].label) for key in SUBJECTS]
        self.fields["kind"].choices = [("", "nothing for us: leave it out"), *kinds]
        self.fields["kind"].initial = sheet.kind
        self.fields["heading_row"].initial = sheet.heading_row
        of_column = {column: key for key, column in sheet.columns.items()}
        for column, (heading, samples) in enumerate(self.looks()):
            self.fields[f"column_{column}"] = forms.ChoiceField(
                label=heading or f"column {column + 1}, without a heading",
                choices=self.held(),
                required=False,
                initial=of_column.get(column, ""),
                help_text="; ".join(samples) or "empty in the first rows",
            )

    def looks(self) -> list[tuple[str, list[str]]]:
        """(heading, a few of the cells below) of every column."""
        rows = self.sheet.rows
        headings = rows[self.sheet.heading_row - 1] if self.sheet.heading_row <= len(rows) else []
        below = rows[self.sheet.heading_row : self.sheet.heading_row + 40]
        width = max([len(headings), *(len(row) for row in below)], default=0)
        looked = []
        for column in range(width):
            cells = [row[column] for row in below if column < len(row) and row[column]]
            heading = headings[column] if column < len(headings) else ""
            looked.append((heading, [cell[:40] for cell in dict.fromkeys(cells)][:SAMPLES]))
        return looked if self.sheet.kind else []

    def held(self) -> list[tuple[str, str]]:
        fields = KINDS[self.sheet.kind].fields if self.sheet.kind else ()
        return [("", "— leave it out —"), *((field.key, field.label) for field in fields)]

    def column_fields(self) -> list[forms.BoundField]:
        return [self[name] for name in self.fields if name.startswith("column_")]

    @property
    def asks_anew(self) -> bool:
        """Whether another kind or row of headings was chosen, so that the columns must be looked at again."""
        chosen = (self.cleaned_data.get("kind", ""), self.cleaned_data.get("heading_row"))
        return chosen != (self.sheet.kind, self.sheet.heading_row)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        if not self.errors and not self.asks_anew and self.sheet.kind:
            self.check_columns(self.columns())
        return cleaned

    def columns(self) -> dict[str, int]:
        """Field → column, as chosen; a field chosen twice keeps its first column."""
        chosen: dict[str, int] = {}
        for name, key in list(self.cleaned_data.items()):
            if name.startswith("column_") and key:
                if key in chosen:
                    other = self.fields[f"column_{chosen[key]}"].label
                    self.add_error(
                        name, f"“{other}” holds this already. Choose something else for one of them."
                    )
                chosen.setdefault(key, int(name.removeprefix("column_")))
        return chosen

    def check_columns(self, chosen: dict[str, int]) -> None:
        missing = [f.label for f in KINDS[self.sheet.kind].fields if f.needed and f.key not in chosen]
        if missing:
            self.add_error(
                "kind", f"No column holds: {', '.join(missing)}. Choose it below, or leave the sheet out."
            )
