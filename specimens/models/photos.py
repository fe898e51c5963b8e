"""Photographs of a plant; the original is dropped, place data and all."""

import secrets

from django.db import models
from django.utils import timezone
from simple_history.models import HistoricalRecords


def random_key() -> str:
    return secrets.token_urlsafe(16)


class Photo(models.Model):
    class ShownTo(models.TextChoices):
        MEMBERS = "members", "members"
        PAPERS = "papers", "members and the society’s papers"
        NOBODY = "nobody", "nobody"

    key = models.CharField(max_length=32, unique=True, default=random_key, editable=False)
    specimen = models.ForeignKey("specimens.Specimen", models.CASCADE, related_name="photos")
    file = models.ImageField(max_length=120)
    thumbnail = models.ImageField(max_length=120)
    width = models.PositiveIntegerField(default=0)
    height = models.PositiveIntegerField(default=0)
    sha256 = models.CharField(max_length=64, db_index=True)
    difference_hash = models.CharField("sixteen hexadecimal digits", max_length=16, blank=True, db_index=True)
    taken_by = models.ForeignKey(
        "society.Member", models.SET_NULL, null=True, blank=True, related_name="photos"
    )
    shown_to = models.CharField("may be shown to", max_length=7, choices=ShownTo, default=ShownTo.MEMBERS)
    caption = models.CharField(max_length=200, blank=True)
    is_drawing = models.BooleanField("a drawing, not a photograph", default=False)
    added_by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    added_at = models.DateTimeField(default=timezone.now, editable=False)
    history = HistoricalRecords()

    class Meta:
        ordering = ["specimen", "-added_at", "-pk"]

    def __str__(self) -> str:
        return f"Photo of {self.specimen}"
