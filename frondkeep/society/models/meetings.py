"""Meetings, where plants change hands."""

from django.db import models
from simple_history.models import HistoricalRecords


class Meeting(models.Model):
    name = models.CharField(max_length=120)
    date = models.DateField()
    place = models.CharField(max_length=120, blank=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["-date", "name"]
        constraints = [models.UniqueConstraint(fields=["name", "date"], name="meeting_once")]

    def __str__(self) -> str:
        return f"{self.name}, {self.date.day} {self.date:%B %Y}"
