"""Who shows what: exhibitors with their numbers, entries with theirs."""

from __future__ import annotations

from django.db import models
from django.db.models import Prefetch, Q
from django.utils import timezone
from simple_history.models import HistoricalRecords

from frondkeep.society.models import User


class Exhibitor(models.Model):
    """Somebody who shows: a member or a household (which shows as one), or a guest by name."""

    show = models.ForeignKey("shows.Show", models.CASCADE, related_name="exhibitors")
    number = models.PositiveSmallIntegerField()
    keeper = models.ForeignKey(
        "society.Keeper", models.PROTECT, null=True, blank=True, related_name="exhibits"
    )
    guest_name = models.CharField(max_length=120, blank=True)
    junior = models.BooleanField(default=False)
    history = HistoricalRecords()

    class Meta:
        ordering = ["show", "number"]
        constraints = [
            models.UniqueConstraint(fields=["show", "number"], name="exhibitor_number_once"),
            models.UniqueConstraint(
                fields=["show", "keeper"], condition=Q(keeper__isnull=False), name="exhibitor_once"
            ),
            models.CheckConstraint(
                name="exhibitor_is_keeper_or_guest",
                condition=Q(keeper__isnull=False, guest_name="")
                | (Q(keeper__isnull=True) & ~Q(guest_name="")),
            ),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def name(self) -> str:
        """The true name, for the committee."""
        return self.keeper.name if self.keeper else self.guest_name


class EntryQuerySet(models.QuerySet["Entry"]):
    def standing(self) -> EntryQuerySet:
        """Entries that were not withdrawn."""
        return self.filter(withdrawn_at__isnull=True)

    def of_user(self, user: User) -> EntryQuerySet:
        """Entries of the user and of their household."""
        return self.filter(exhibitor__keeper__in=user.keeper_ids)

    def as_staged(self) -> EntryQuerySet:
        """By class, then by number, those without one last; with what a list prints (three more queries)."""
        plants = EntryPlant.objects.select_related(
            "name__accepted", "specimen__identification__name__accepted", "specimen__sowing"
        ).prefetch_related("specimen__sowing__sources__specimen__identification")
        return (
            self.select_related("show_class", "exhibitor__keeper__member", "exhibitor__keeper__household")
            .prefetch_related(Prefetch("plants", plants))
            .order_by("show_class__number", models.F("number").asc(nulls_last=True), "at", "pk")
        )


class Entry(models.Model):
    """One exhibit in one class. Its number is given once and stays."""

    show = models.ForeignKey("shows.Show", models.CASCADE, related_name="entries")
    show_class = models.ForeignKey("shows.ShowClass", models.PROTECT, related_name="entries")
    exhibitor = models.ForeignKey(Exhibitor, models.PROTECT, related_name="entries")
    number = models.PositiveIntegerField(null=True, blank=True)
    title = models.CharField("what it is called", max_length=200, blank=True)
    note = models.CharField(max_length=200, blank=True)
    withdrawn_at = models.DateTimeField(null=True, blank=True)
    entered_by = models.ForeignKey("society.User", models.SET_NULL, null=True, related_name="+")
    at = models.DateTimeField(default=timezone.now, editable=False)
    import_key = models.CharField(max_length=64, blank=True, editable=False, db_index=True)
    history = HistoricalRecords()

    objects = EntryQuerySet.as_manager()

    class Meta:
        verbose_name_plural = "entries"
        constraints = [
            models.UniqueConstraint(
                fields=["show", "number"], condition=Q(number__isnull=False), name="entry_number_once"
            ),
            models.UniqueConstraint(
                fields=["import_key"], condition=~Q(import_key=""), name="entry_imported_once"
            ),
        ]

    def __str__(self) -> str:
        return f"Entry {self.number or 'not numbered'} in {self.show_class}"


class EntryPlant(models.Model):
    """One plant of an entry: on record, or by a typed name."""

    entry = models.ForeignKey(Entry, models.CASCADE, related_name="plants")
    order = models.PositiveSmallIntegerField(default=0)
    specimen = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="shown_in"
    )
    typed_name = models.CharField(max_length=200, blank=True)
    # The name on record that the typed one was read as, if any.
    name = models.ForeignKey("specimens.Name", models.PROTECT, null=True, blank=True, related_name="+")

    class Meta:
        ordering = ["entry", "order", "pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["entry", "specimen"], condition=Q(specimen__isnull=False), name="plant_once_an_entry"
            ),
            models.CheckConstraint(
                name="shown_plant_is_recorded_or_typed",
                condition=Q(specimen__isnull=False, typed_name="")
                | (Q(specimen__isnull=True) & ~Q(typed_name="")),
            ),
        ]

    def __str__(self) -> str:
        return str(self.specimen or self.typed_name)
