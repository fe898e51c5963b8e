"""Who says what the parents were, and on what ground. Superseded, never deleted."""

from django.db import models
from django.db.models import Q
from django.utils import timezone
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns


class ParentageClaim(models.Model):
    """One statement about the descent of a plant or of a name; at most one stands."""

    class Says(models.TextChoices):
        CROSS = "cross", "a hybrid of two"
        SELF = "self", "from spores of one plant"
        MIXED = "mixed", "sown together, not settled"
        SPORT = "sport", "a sport of"
        PIECE = "piece", "a piece of"
        APOGAMOUS = "apogamous", "same as its parent, though from spores"
        UNKNOWN = "unknown", "not known"

    class Selfing(models.TextChoices):
        NOT_KNOWN = "", "not known"
        INTRA = "intra", "one gametophyte"
        INTER = "inter", "two gametophytes of one plant"

    class Ground(models.TextChoices):
        RECORD = "record", "grower’s record"
        LABEL = "label", "its label"
        PUBLISHED = "published", "published"
        LOOKS = "looks", "its looks"
        DNA = "dna", "DNA"

    class Standing(models.TextChoices):
        CURRENT = "current", "current"
        SUPERSEDED = "superseded", "formerly thought"

    specimen = models.ForeignKey(
        "specimens.Specimen", models.CASCADE, null=True, blank=True, related_name="claims"
    )
    name = models.ForeignKey("specimens.Name", models.CASCADE, null=True, blank=True, related_name="claims")
    says = models.CharField(max_length=9, choices=Says)
    selfing = models.CharField(max_length=5, choices=Selfing, blank=True, default="")
    selfs_excluded = models.BooleanField("selfs are ruled out", default=False)
    ground = models.CharField(max_length=9, choices=Ground)
    by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    by_words = models.CharField(max_length=120, blank=True)
    made = PartialDateColumns()
    source = models.CharField(max_length=300, blank=True)
    standing = models.CharField(max_length=10, choices=Standing, default=Standing.CURRENT)
    superseded_at = models.DateTimeField(null=True, blank=True)
    superseded_reason = models.CharField(max_length=300, blank=True)
    at = models.DateTimeField(default=timezone.now, editable=False)
    import_key = models.CharField(max_length=64, blank=True, editable=False, db_index=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["-at", "-pk"]
        constraints = [
            models.CheckConstraint(
                name="claim_of_plant_or_name",
                condition=Q(specimen__isnull=False, name__isnull=True)
                | Q(specimen__isnull=True, name__isnull=False),
            ),
            models.UniqueConstraint(
                fields=["specimen"],
                condition=Q(standing="current", specimen__isnull=False),
                name="one_current_claim_a_plant",
            ),
            models.UniqueConstraint(
                fields=["name"],
                condition=Q(standing="current", name__isnull=False),
                name="one_current_claim_a_name",
            ),
            models.UniqueConstraint(
                fields=["import_key"], condition=~Q(import_key=""), name="claim_imported_once"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.specimen or self.name}: {self.get_says_display()}"


class ClaimParent(models.Model):
    """A parent or candidate of a claim: a plant, a name, or neither — a plant not known."""

    class Part(models.TextChoices):
        UNSPECIFIED = "", "not said"
        EGG = "egg", "egg parent"
        SPERM = "sperm", "sperm parent"

    claim = models.ForeignKey(ParentageClaim, models.CASCADE, related_name="parents")
    order = models.PositiveSmallIntegerField(default=0)
    specimen = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="claimed_parent_in"
    )
    name = models.ForeignKey(
        "specimens.Name", models.PROTECT, null=True, blank=True, related_name="claimed_parent_in"
    )
    part = models.CharField(max_length=5, choices=Part, blank=True, default="")
    words = models.CharField(max_length=200, blank=True)

    class Meta:
        ordering = ["claim", "order", "pk"]
        constraints = [
            models.CheckConstraint(
                name="claim_parent_is_plant_or_name",
                condition=Q(specimen__isnull=True) | Q(name__isnull=True),
            ),
            models.UniqueConstraint(fields=["claim", "order"], name="claim_parent_order_once"),
        ]

    def __str__(self) -> str:
        return str(self.specimen or self.name or self.words or "not known")
