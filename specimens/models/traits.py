"""What tells plants apart, seen on a name or on a single plant."""

from django.db import models
from django.db.models import Q
from simple_history.models import HistoricalRecords


class Trait(models.Model):
    key = models.SlugField(max_length=40, unique=True)
    label = models.CharField(max_length=60)
    question = models.CharField("what to look at", max_length=200, blank=True)
    stable = models.BooleanField("the same in every growing place", default=True)
    order = models.PositiveSmallIntegerField(default=0)

    class Meta:
        ordering = ["order", "label"]

    def __str__(self) -> str:
        return self.label


class TraitState(models.Model):
    trait = models.ForeignKey(Trait, models.CASCADE, related_name="states")
    key = models.SlugField(max_length=40)
    label = models.CharField(max_length=80)
    order = models.PositiveSmallIntegerField(default=0)

    class Meta:
        ordering = ["trait", "order", "label"]
        constraints = [models.UniqueConstraint(fields=["trait", "key"], name="state_once_a_trait")]

    def __str__(self) -> str:
        return self.label


class TraitRecord(models.Model):
    """One state, recorded of a name (as published or agreed) or seen on one plant."""

    name = models.ForeignKey("specimens.Name", models.CASCADE, null=True, blank=True, related_name="traits")
    specimen = models.ForeignKey(
        "specimens.Specimen", models.CASCADE, null=True, blank=True, related_name="traits"
    )
    state = models.ForeignKey(TraitState, models.PROTECT)
    source = models.CharField(max_length=300, blank=True)
    seen_by = models.ForeignKey("society.Member", models.SET_NULL, null=True, blank=True, related_name="+")
    history = HistoricalRecords()

    class Meta:
        constraints = [
            models.CheckConstraint(
                name="trait_of_name_or_plant",
                condition=Q(name__isnull=False, specimen__isnull=True)
                | Q(name__isnull=True, specimen__isnull=False),
            ),
            models.UniqueConstraint(
                fields=["name", "state"], condition=Q(name__isnull=False), name="state_once_a_name"
            ),
            models.UniqueConstraint(
                fields=["specimen", "state"], condition=Q(specimen__isnull=False), name="state_once_a_plant"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.name or self.specimen}: {self.state}"
