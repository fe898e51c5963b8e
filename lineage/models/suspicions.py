"""Pairs that are perhaps one plant, and what people decided of them."""

from __future__ import annotations

from typing import Any

from django.db import models
from django.db.models import F, Q
from django.utils import timezone

from lineage.core.decisions import Answer, Decision


class Kind(models.TextChoices):
    """What can be suspected; the words are those of the pages."""

    NAMES = "names", "perhaps the same plant"
    ONE_NAME = "one name", "perhaps two plants under one name"
    LOGGED_TWICE = "twice", "perhaps logged twice"


# Two names, or two plants; which kind has which.
OF_NAMES = Q(
    kind=Kind.NAMES,
    first_name__isnull=False,
    second_name__isnull=False,
    first_plant__isnull=True,
    second_plant__isnull=True,
    first_name__lt=F("second_name"),
)
OF_PLANTS = Q(
    kind__in=[Kind.ONE_NAME, Kind.LOGGED_TWICE],
    first_name__isnull=True,
    second_name__isnull=True,
    first_plant__isnull=False,
    second_plant__isnull=False,
    first_plant__lt=F("second_plant"),
)


class SuspicionQuerySet(models.QuerySet["Suspicion"]):
    def waiting(self) -> SuspicionQuerySet:
        """Pairs that wait for a decision, the likeliest first."""
        return self.filter(in_queue=True).in_order()

    def in_order(self) -> SuspicionQuerySet:
        return self.order_by("-probability", "-score", "pk")

    def with_names(self) -> SuspicionQuerySet:
        return self.select_related(
            "first_name__accepted", "first_name__genus", "second_name__accepted", "second_name__genus"
        )

    def of_names(self, ids: Any) -> SuspicionQuerySet:
        """Pairs of which at least one name is among these."""
        return self.filter(Q(first_name__in=ids) | Q(second_name__in=ids), kind=Kind.NAMES)


class Suspicion(models.Model):
    """Two names, or two plants, that may be one. All of it is computed and can be computed again.

    The two stand in the order of their ids. `score` is the likeness of the names as written, 0 to 1;
    `bits` the sum of the clues and `probability` what it comes to. `summands` has one entry a clue, the
    weightiest first: witness, level, bits, strength, sentence. `in_queue`: it waits for a decision;
    `returned_because` says which new clues brought back a pair that was decided.
    """

    kind = models.CharField(max_length=8, choices=Kind, default=Kind.NAMES)
    first_name = models.ForeignKey("specimens.Name", models.CASCADE, null=True, related_name="+")
    second_name = models.ForeignKey("specimens.Name", models.CASCADE, null=True, related_name="+")
    first_plant = models.ForeignKey("specimens.Specimen", models.CASCADE, null=True, related_name="+")
    second_plant = models.ForeignKey("specimens.Specimen", models.CASCADE, null=True, related_name="+")
    score = models.FloatField()
    bits = models.FloatField()
    probability = models.FloatField()
    summands = models.JSONField(default=list)
    weights_version = models.CharField(max_length=40)
    in_queue = models.BooleanField(default=False)
    returned_because = models.JSONField(default=list)
    weighed_at = models.DateTimeField(default=timezone.now)

    objects = SuspicionQuerySet.as_manager()

    class Meta:
        indexes = [models.Index(fields=["in_queue", "-probability"], name="queue_in_order")]
        constraints = [
            models.CheckConstraint(name="suspicion_of_two_in_order", condition=OF_NAMES | OF_PLANTS),
            models.UniqueConstraint(
                fields=["kind", "first_name", "second_name"],
                condition=Q(first_name__isnull=False),
                name="suspicion_once_a_pair_of_names",
            ),
            models.UniqueConstraint(
                fields=["kind", "first_plant", "second_plant"],
                condition=Q(first_plant__isnull=False),
                name="suspicion_once_a_pair_of_plants",
            ),
            models.CheckConstraint(
                name="suspicion_in_bounds",
                condition=Q(score__gte=0, score__lte=1, probability__gte=0, probability__lte=1),
            ),
        ]

    def __str__(self) -> str:
        return f"{self.first_name or self.first_plant} – {self.second_name or self.second_plant}"

    @property
    def pair(self) -> tuple[int, int]:
        """The ids of the two names; of a pair of plants, no ids of names."""
        return self.first_name_id or 0, self.second_name_id or 0

    @property
    def in_a_hundred(self) -> int:
        """How many of a hundred such pairs are one plant; never told as none or as all."""
        return min(99, max(1, round(100 * self.probability)))

    @property
    def clues(self) -> dict[str, str]:
        """Level by witness, for those that say something."""
        return {each["witness"]: each["level"] for each in self.summands if each["bits"]}


class AppendOnlyError(RuntimeError):
    """A decision is never changed or deleted, only followed by another one."""


class RulingQuerySet(models.QuerySet["Ruling"]):
    def in_time(self) -> RulingQuerySet:
        return self.order_by("pk")

    def newest_first(self) -> RulingQuerySet:
        return self.order_by("-pk")

    def decisions(self) -> list[Decision]:
        """All decisions on names, as they are replayed; one query."""
        rows = self.filter(kind=Kind.NAMES).values_list(
            "pk", "answer", "first_name", "second_name", "stands", "kept", "undoes"
        )
        return [Decision(*row) for row in rows.order_by("pk")]


class Ruling(models.Model):
    """What a curator decided of a pair, and why. Rows are added only; a later one may undo an earlier.

    `stands` is the name that is to stand for both, `kept` the one of the pair on whose side it was.
    `undoes` is the decision this one takes back. `seen` are the clues (level by witness) it was made on.
    """

    class Answers(models.TextChoices):
        SAME = Answer.SAME.value, "the same plant"
        DIFFERENT = Answer.DIFFERENT.value, "different plants"
        EVIDENCE = Answer.EVIDENCE.value, "more evidence is wanted"
        NOT_KNOWN = Answer.NOT_KNOWN.value, "cannot be known yet"
        UNDONE = Answer.UNDONE.value, "undone"

    kind = models.CharField(max_length=8, choices=Kind, default=Kind.NAMES)
    answer = models.CharField(max_length=9, choices=Answers)
    first_name = models.ForeignKey("specimens.Name", models.PROTECT, null=True, related_name="+")
    second_name = models.ForeignKey("specimens.Name", models.PROTECT, null=True, related_name="+")
    first_plant = models.ForeignKey("specimens.Specimen", models.PROTECT, null=True, related_name="+")
    second_plant = models.ForeignKey("specimens.Specimen", models.PROTECT, null=True, related_name="+")
    stands = models.ForeignKey("specimens.Name", models.PROTECT, null=True, related_name="+")
    kept = models.ForeignKey("specimens.Name", models.PROTECT, null=True, related_name="+")
    reason = models.TextField()
    undoes = models.ForeignKey("self", models.PROTECT, null=True, related_name="undone_by")
    seen = models.JSONField(default=dict)
    by = models.ForeignKey("society.User", models.SET_NULL, null=True, related_name="+")
    at = models.DateTimeField(default=timezone.now, editable=False)

    objects = RulingQuerySet.as_manager()

    class Meta:
        ordering = ["pk"]
        constraints = [
            models.CheckConstraint(name="ruling_of_two_in_order", condition=OF_NAMES | OF_PLANTS),
            models.CheckConstraint(name="ruling_has_a_reason", condition=~Q(reason="")),
            models.CheckConstraint(
                name="ruling_says_which_name_stands",
                condition=~Q(answer="same", kind="names")
                | (Q(stands__isnull=False) & (Q(kept=F("first_name")) | Q(kept=F("second_name")))),
            ),
            models.CheckConstraint(
                name="undoing_says_what", condition=~Q(answer="undone") | Q(undoes__isnull=False)
            ),
            models.CheckConstraint(
                name="ruling_undoes_an_earlier_one", condition=Q(undoes__isnull=True) | Q(undoes__lt=F("id"))
            ),
        ]

    def __str__(self) -> str:
        return f"{self.first_name} – {self.second_name}: {self.get_answer_display()}"

    def save(self, *args: Any, **kwargs: Any) -> None:
        if not self._state.adding:
            raise AppendOnlyError(str(self))
        super().save(*args, **kwargs)

    def delete(self, *args: Any, **kwargs: Any) -> Any:
        raise AppendOnlyError(str(self))

    @property
    def pair(self) -> tuple[int, int]:
        """The ids of the two names; of a pair of plants, no ids of names."""
        return self.first_name_id or 0, self.second_name_id or 0
