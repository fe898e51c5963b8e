"""A show, its rules and its classes."""

from __future__ import annotations

from django.db import models
from django.db.models import Q
from django.urls import reverse
from django.utils import timezone
from simple_history.models import HistoricalRecords


class ShowQuerySet(models.QuerySet["Show"]):
    def coming(self) -> ShowQuerySet:
        """Shows of today and later, the nearest first."""
        return self.filter(date__gte=timezone.localdate()).order_by("date", "pk")

    def past(self) -> ShowQuerySet:
        """Shows before today, the latest first."""
        return self.filter(date__lt=timezone.localdate()).order_by("-date", "-pk")

    def taking_entries(self) -> ShowQuerySet:
        """Coming shows whose entries have not closed, the nearest first."""
        return self.coming().filter(entries_close_at__gt=timezone.now())


class Show(models.Model):
    """One show. Until judging closes nobody but the committee can find out whose entry it is."""

    name = models.CharField(max_length=120)
    date = models.DateField()
    venue = models.CharField(max_length=160, blank=True)
    entries_close_at = models.DateTimeField("entries close")
    judging_closed_at = models.DateTimeField(null=True, blank=True)
    months_of_possession = models.PositiveSmallIntegerField(
        "months the exhibitor must have kept a plant", default=6
    )
    most_entries = models.PositiveSmallIntegerField("most entries an exhibitor", null=True, blank=True)
    most_in_class = models.PositiveSmallIntegerField("most entries an exhibitor in one class", default=1)
    notes = models.TextField(blank=True)
    history = HistoricalRecords()

    objects = ShowQuerySet.as_manager()

    class Meta:
        ordering = ["-date", "-pk"]
        constraints = [
            models.UniqueConstraint(fields=["name", "date"], name="show_once"),
            models.CheckConstraint(name="exhibitor_may_enter_a_class", condition=Q(most_in_class__gte=1)),
        ]

    def __str__(self) -> str:
        return f"{self.name}, {self.date.day} {self.date:%B %Y}"

    def get_absolute_url(self) -> str:
        return reverse("show", args=[self.pk])

    @property
    def date_words(self) -> str:
        return f"{self.date.day} {self.date:%B %Y}"

    @property
    def takes_entries(self) -> bool:
        return self.judging_closed_at is None and timezone.now() < self.entries_close_at

    @property
    def is_judged(self) -> bool:
        return self.judging_closed_at is not None


class ShowClass(models.Model):
    """A class of the schedule: what is staged, of what, and how many plants to an entry."""

    class Stages(models.TextChoices):
        PLANTS = "plants", "plants"
        FRONDS = "fronds", "cut fronds"
        DISPLAY = "display", "a display"
        PHOTOGRAPH = "photograph", "photographs"

    class Wants(models.TextChoices):
        ANY = "", "any"
        SPECIES = "species", "a species"
        HYBRID = "hybrid", "a hybrid"
        CULTIVAR = "cultivar", "a named cultivar"
        RAISED = "raised", "raised from spores by the exhibitor"

    show = models.ForeignKey(Show, models.CASCADE, related_name="classes")
    number = models.PositiveSmallIntegerField()
    section = models.CharField(max_length=120, blank=True)
    title = models.CharField(max_length=200)
    stages = models.CharField("what is staged", max_length=10, choices=Stages, default=Stages.PLANTS)
    wants = models.CharField("what may enter", max_length=8, choices=Wants, blank=True, default="")
    genus = models.ForeignKey("specimens.Name", models.PROTECT, null=True, blank=True, related_name="+")
    how_many = models.PositiveSmallIntegerField("plants to an entry", default=1)
    history = HistoricalRecords()

    class Meta:
        ordering = ["show", "number"]
        verbose_name_plural = "classes"
        constraints = [
            models.UniqueConstraint(fields=["show", "number"], name="class_number_once_a_show"),
            models.CheckConstraint(name="class_stages_something", condition=Q(how_many__gte=1)),
        ]

    def __str__(self) -> str:
        return f"Class {self.number}: {self.title}"

    @property
    def stages_plants(self) -> bool:
        return self.stages == self.Stages.PLANTS
