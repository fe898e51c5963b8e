"""One table of names, botanical and cultivar; what each is placed as, by which treatment."""

from __future__ import annotations

from dataclasses import replace
from functools import cached_property

from django.db import models
from django.db.models import F, Q
from django.db.models.functions import Coalesce, Lower
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns
from specimens.naming.names import NameParts, Run, formula_runs, name_runs


class Rank(models.TextChoices):
    GENUS = "genus", "genus"
    NOTHOGENUS = "nothogenus", "hybrid genus"
    SPECIES = "species", "species"
    NOTHOSPECIES = "nothospecies", "hybrid species"
    SUBSPECIES = "subspecies", "subspecies"
    VARIETY = "variety", "variety"
    FORMA = "forma", "form"
    INFORMAL = "informal", "informal form"
    FORMULA = "formula", "hybrid formula"
    GROUP = "group", "Group"
    CULTIVAR = "cultivar", "cultivar"


SPECIES_RANKS = (Rank.SPECIES, Rank.NOTHOSPECIES)
INFRASPECIFIC_RANKS = (Rank.SUBSPECIES, Rank.VARIETY, Rank.FORMA, Rank.INFORMAL)
HYBRID_RANKS = (Rank.NOTHOSPECIES, Rank.FORMULA)


class Reproduction(models.TextChoices):
    """How a cultivar is kept: decides whether its name is one plant or a strain."""

    DIVISION = "division", "by division only"
    SPORES = "spores", "true from spores"
    NOT_KNOWN = "not known", "not known"


class Treatment(models.Model):
    """A published account of which name is accepted; the society follows one."""

    name = models.CharField(max_length=120, unique=True)
    citation = models.CharField(max_length=300, blank=True)
    followed = models.BooleanField("the society follows it", default=False)

    class Meta:
        ordering = ["name"]
        constraints = [
            models.UniqueConstraint(
                fields=["followed"], condition=Q(followed=True), name="one_treatment_followed"
            )
        ]

    def __str__(self) -> str:
        return self.name


class NameQuerySet(models.QuerySet["Name"]):
    def standing(self) -> NameQuerySet:
        """Names that are not voided."""
        return self.filter(voided_reason="")

    def cultivars(self) -> NameQuerySet:
        return self.standing().filter(rank=Rank.CULTIVAR)

    def not_yet_checked(self) -> NameQuerySet:
        """Names a member brought in that no curator has looked at; newest first."""
        return self.standing().filter(checked=False).order_by("-pk")

    def accepted_as(self, name: Name) -> NameQuerySet:
        """Every name whose accepted name for today is this one, itself included."""
        return self.standing().filter(accepted=name)

    def in_reading_order(self) -> NameQuerySet:
        return self.order_by("sort_text", "pk")


class Name(models.Model):
    """A name of any rank. A cultivar stands under its genus or a species; its quotes are not stored.

    `written`, `sort_text`, `parts` and `genus` follow from the chain of parents and are kept by the
    services of names; `accepted` is the answer for today, derived from placements and rulings.
    """

    rank = models.CharField(max_length=12, choices=Rank)
    parent = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="children")
    epithet = models.CharField(max_length=120, blank=True)
    author = models.CharField(max_length=120, blank=True)
    trade_designation = models.CharField(max_length=120, blank=True)
    group = models.ForeignKey("self", models.PROTECT, null=True, blank=True, related_name="group_members")
    first_parent = models.ForeignKey(
        "self",
        models.PROTECT,
        null=True,
        blank=True,
        related_name="+",
        verbose_name="first parent of the hybrid",
    )
    second_parent = models.ForeignKey(
        "self",
        models.PROTECT,
        null=True,
        blank=True,
        related_name="+",
        verbose_name="second parent of the hybrid",
    )

    reproduction = models.CharField(max_length=9, choices=Reproduction, default=Reproduction.NOT_KNOWN)
    raiser = models.CharField(max_length=120, blank=True)
    introduced = PartialDateColumns()
    origin = models.TextField(blank=True)
    original_plant = models.ForeignKey(
        "specimens.Specimen", models.SET_NULL, null=True, blank=True, related_name="names_founded"
    )
    home = models.CharField("where it grows wild", max_length=200, blank=True)
    natural_group = models.CharField(max_length=60, blank=True)
    solitary = models.BooleanField("makes no pups by nature", default=False)
    notes = models.TextField(blank=True)
    checked = models.BooleanField("checked by a curator", default=True)
    added_by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")

    written = models.CharField(max_length=400, editable=False, default="", db_index=True)
    sort_text = models.CharField(max_length=400, editable=False, default="", db_index=True)
    parts = models.JSONField(editable=False, default=dict)
    genus = models.ForeignKey(
        "self", models.PROTECT, null=True, editable=False, related_name="names_in_genus"
    )
    accepted = models.ForeignKey(
        "self", models.PROTECT, null=True, editable=False, related_name="also_known_as"
    )

    version = models.PositiveIntegerField(default=1, editable=False)
    voided_reason = models.CharField(max_length=200, blank=True)
    history = HistoricalRecords(excluded_fields=["written", "sort_text", "parts", "genus", "accepted"])

    objects = NameQuerySet.as_manager()

    class Meta:
        ordering = ["sort_text", "pk"]
        constraints = [
            models.UniqueConstraint(
                Coalesce("parent", 0),
                "rank",
                Lower("epithet"),
                Lower("author"),
                condition=Q(voided_reason="") & ~Q(rank="formula"),
                name="name_once",
                violation_error_message="This name is on record already.",
            ),
            models.UniqueConstraint(
                fields=["first_parent", "second_parent"],
                condition=Q(rank="formula", voided_reason=""),
                name="formula_once",
            ),
            models.CheckConstraint(
                name="name_has_its_place",
                condition=Q(rank__in=["genus", "nothogenus"], parent__isnull=True)
                | Q(rank="formula")
                | Q(parent__isnull=False),
            ),
            models.CheckConstraint(
                name="formula_has_parents",
                condition=~Q(rank="formula") | Q(first_parent__isnull=False, second_parent__isnull=False),
            ),
            models.CheckConstraint(name="name_has_epithet", condition=Q(rank="formula") | ~Q(epithet="")),
            models.CheckConstraint(
                name="name_not_its_own_parent", condition=Q(parent__isnull=True) | ~Q(parent=F("id"))
            ),
        ]

    def __str__(self) -> str:
        return self.written or self.epithet

    @cached_property
    def name_parts(self) -> NameParts:
        """The parts of the name; empty for a hybrid formula, which has two names in it."""
        return NameParts() if "formula" in self.parts else NameParts.from_json(self.parts)

    def runs(self, *, qualifier: str = "", raised_from: bool = False, **options: bool) -> tuple[Run, ...]:
        """The name as italic and upright stretches; needs no further query."""
        if "formula" in self.parts:
            runs = formula_runs([NameParts.from_json(parent) for parent in self.parts["formula"]])
            return (*runs, Run(f" {qualifier}", "roman")) if qualifier else runs
        return name_runs(replace(self.name_parts, qualifier=qualifier, raised_from=raised_from), **options)

    @property
    def is_cultivar(self) -> bool:
        return self.rank == Rank.CULTIVAR

    @property
    def is_clonal(self) -> bool:
        """Whether whoever bears the name is one plant: a cultivar kept by division only."""
        return self.is_cultivar and self.reproduction == Reproduction.DIVISION

    @property
    def is_accepted(self) -> bool:
        return self.accepted_id in (None, self.pk)


class Placement(models.Model):
    """What one treatment says of one botanical name."""

    class Status(models.TextChoices):
        ACCEPTED = "accepted", "accepted"
        SYNONYM = "synonym", "a synonym of"
        MISAPPLIED = "misapplied", "misapplied for"

    name = models.ForeignKey(Name, models.CASCADE, related_name="placements")
    treatment = models.ForeignKey(Treatment, models.CASCADE, related_name="placements")
    status = models.CharField(max_length=10, choices=Status)
    accepted = models.ForeignKey(Name, models.PROTECT, null=True, blank=True, related_name="placed_here")
    source = models.CharField(max_length=300, blank=True)
    history = HistoricalRecords()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["name", "treatment"], name="placed_once_a_treatment"),
            models.CheckConstraint(
                name="synonym_has_accepted_name",
                condition=Q(status="accepted", accepted__isnull=True)
                | (~Q(status="accepted") & Q(accepted__isnull=False)),
            ),
            models.CheckConstraint(
                name="no_synonym_of_itself", condition=Q(accepted__isnull=True) | ~Q(accepted=F("name"))
            ),
        ]

    def __str__(self) -> str:
        return f"{self.name}: {self.get_status_display()} {self.accepted or ''}".rstrip()
