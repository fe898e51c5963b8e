"""How one plant becomes another: pieces, sowings of spores, crosses."""

from django.db import models
from django.db.models import Q
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns


class Division(models.Model):
    """A piece was taken from a plant; the same genotype goes on in it, unless it sported."""

    class Kind(models.TextChoices):
        PUP = "pup", "pup"
        CROWN = "crown", "crown division"
        RHIZOME = "rhizome", "rhizome piece"
        BULBIL = "bulbil", "bulbil"
        CULTURE = "culture", "tissue culture"
        NOT_KNOWN = "not known", "piece"

    parent = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="divisions"
    )
    parent_words = models.CharField("the parent, in words", max_length=200, blank=True)
    kind = models.CharField(max_length=9, choices=Kind, default=Kind.PUP)
    sport = models.BooleanField("it came out different", default=False)
    sport_words = models.CharField("what changed", max_length=200, blank=True)
    taken = PartialDateColumns()
    by = models.ForeignKey("society.Member", models.SET_NULL, null=True, blank=True, related_name="+")
    voided_reason = models.CharField(max_length=200, blank=True)
    history = HistoricalRecords()

    def __str__(self) -> str:
        return f"{self.get_kind_display()} of {self.parent or self.parent_words or 'a plant not known'}"


class Cross(models.Model):
    """Two plants whose spores were put together, or a hybrid that somebody noticed."""

    class How(models.TextChoices):
        INTENDED = "intended", "intended"
        NOTICED = "noticed", "came up by chance"
        REPORTED = "reported", "reported by others"

    label = models.CharField(max_length=120, blank=True)
    how = models.CharField(max_length=8, choices=How)
    first_specimen = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="+"
    )
    first_name = models.ForeignKey("specimens.Name", models.PROTECT, null=True, blank=True, related_name="+")
    second_specimen = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="+"
    )
    second_name = models.ForeignKey("specimens.Name", models.PROTECT, null=True, blank=True, related_name="+")
    egg_parent = models.PositiveSmallIntegerField(
        null=True, blank=True, choices=[(1, "the first"), (2, "the second")]
    )
    method = models.CharField(max_length=200, blank=True)
    made = PartialDateColumns()
    by = models.ForeignKey("society.Member", models.SET_NULL, null=True, blank=True, related_name="+")
    by_words = models.CharField(max_length=120, blank=True)
    result = models.ForeignKey(
        "specimens.Name", models.PROTECT, null=True, blank=True, related_name="crosses", verbose_name="named"
    )
    notes = models.TextField(blank=True)
    import_key = models.CharField(max_length=64, blank=True, editable=False, db_index=True)
    voided_reason = models.CharField(max_length=200, blank=True)
    history = HistoricalRecords()

    class Meta:
        verbose_name_plural = "crosses"
        constraints = [
            models.CheckConstraint(
                name="cross_parent_is_plant_or_name",
                condition=(Q(first_specimen__isnull=True) | Q(first_name__isnull=True))
                & (Q(second_specimen__isnull=True) | Q(second_name__isnull=True)),
            ),
            models.UniqueConstraint(
                fields=["import_key"], condition=~Q(import_key=""), name="cross_imported_once"
            ),
        ]

    def __str__(self) -> str:
        return self.label or f"Cross {self.pk}"


class SporeSowing(models.Model):
    """Spores sown together; its sources say whose they were."""

    class Determined(models.TextChoices):
        AS_SOWN = "as sown", "as sown — stray spores are common"
        HYBRID = "hybrid", "found to be hybrids"
        SELF = "self", "found to be of one plant"
        APOGAMOUS = "apogamous", "same as its parent, though from spores"

    code = models.CharField(max_length=20, unique=True, editable=False)
    label = models.CharField("what its label says", max_length=200, blank=True)
    sown = PartialDateColumns()
    by = models.ForeignKey("society.Member", models.SET_NULL, null=True, blank=True, related_name="sowings")
    by_words = models.CharField(max_length=120, blank=True)
    cross = models.ForeignKey(Cross, models.PROTECT, null=True, blank=True, related_name="sowings")
    determined = models.CharField(max_length=9, choices=Determined, default=Determined.AS_SOWN)
    medium = models.CharField(max_length=120, blank=True)
    came_up = models.CharField("what came up", max_length=300, blank=True)
    old_number = models.CharField(max_length=40, blank=True, db_index=True)
    notes = models.TextField(blank=True)
    import_key = models.CharField(max_length=64, blank=True, editable=False, db_index=True)
    voided_reason = models.CharField(max_length=200, blank=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["code"]
        constraints = [
            models.UniqueConstraint(
                fields=["import_key"], condition=~Q(import_key=""), name="sowing_imported_once"
            )
        ]

    def __str__(self) -> str:
        return self.code


class SporeSource(models.Model):
    """Whose spores went in: a plant, a name, or words where neither is on record (not known)."""

    sowing = models.ForeignKey(SporeSowing, models.CASCADE, related_name="sources")
    specimen = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="spores_sown"
    )
    name = models.ForeignKey(
        "specimens.Name", models.PROTECT, null=True, blank=True, related_name="spores_sown"
    )
    words = models.CharField(max_length=200, blank=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["sowing", "pk"]
        constraints = [
            models.CheckConstraint(
                name="source_is_plant_or_name", condition=Q(specimen__isnull=True) | Q(name__isnull=True)
            ),
            models.UniqueConstraint(
                fields=["sowing", "specimen"], condition=Q(specimen__isnull=False), name="source_plant_once"
            ),
        ]

    def __str__(self) -> str:
        return str(self.specimen or self.name or self.words or "not known")
