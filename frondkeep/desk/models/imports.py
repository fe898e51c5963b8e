"""An import under way: the sheets as read, how their columns are understood, and what is planned for each row.

Kept between requests, so that no request reads more than a part; the sheets' content goes when it is written.
"""

from django.db import models
from django.utils import timezone


class ImportBatch(models.Model):
    """Files that make one import, of one user."""

    class State(models.TextChoices):
        COLUMNS = "columns", "its columns are being looked at"
        READING = "reading", "its rows are being read"
        PREVIEW = "preview", "waits to be confirmed"
        DONE = "done", "written"

    by = models.ForeignKey("society.User", models.CASCADE, related_name="+")
    at = models.DateTimeField(default=timezone.now, editable=False)
    state = models.CharField(max_length=8, choices=State, default=State.COLUMNS)
    # Rows by kind, once they are written.
    written = models.JSONField(default=dict)

    class Meta:
        ordering = ["-at", "-pk"]

    def __str__(self) -> str:
        return f"Import {self.pk}: {self.get_state_display()}"


class ImportSheet(models.Model):
    """One sheet of one file. An empty `kind` leaves it out; `columns` holds field → column, from 0."""

    batch = models.ForeignKey(ImportBatch, models.CASCADE, related_name="sheets")
    place = models.PositiveSmallIntegerField()
    file = models.CharField(max_length=255)
    name = models.CharField(max_length=120, blank=True)
    encoding = models.CharField(max_length=20, blank=True)
    kind = models.CharField(max_length=20, blank=True)
    heading_row = models.PositiveSmallIntegerField(default=1)
    columns = models.JSONField(default=dict)
    rows = models.JSONField(default=list)

    class Meta:
        ordering = ["batch", "place"]
        constraints = [models.UniqueConstraint(fields=["batch", "place"], name="sheet_once_a_place")]

    def __str__(self) -> str:
        return f"{self.file}, {self.name}" if self.name else self.file


class ImportedRow(models.Model):
    """What is planned for one row. `order` counts the rows of all sheets from 0."""

    batch = models.ForeignKey(ImportBatch, models.CASCADE, related_name="rows")
    sheet = models.ForeignKey(ImportSheet, models.CASCADE, related_name="planned")
    order = models.PositiveIntegerField()
    number = models.PositiveIntegerField("row in its sheet")
    key = models.CharField(max_length=200)
    title = models.CharField(max_length=600)
    fate = models.CharField(
        max_length=9, choices=[("new", "new"), ("on record", "on record already"), ("refused", "not taken")]
    )
    problems = models.JSONField(default=list)
    notes = models.JSONField(default=list)
    needs = models.JSONField(default=list)
    gives = models.JSONField(default=list)

    class Meta:
        ordering = ["batch", "order"]
        constraints = [models.UniqueConstraint(fields=["batch", "order"], name="row_once_an_import")]

    def __str__(self) -> str:
        return f"{self.sheet}, row {self.number}: {self.fate}"
