"""What is computed of descent: nodes, their parents, and what plants of one parentage share.

Every row here can be thrown away and computed again from the records.
"""

from __future__ import annotations

from django.db import models
from django.db.models import Q


class Origin(models.TextChoices):
    """What a plant came from; the words are those of the pages."""

    FOUNDER = "founder", "the line starts here"
    DIVISION = "division", "a piece"
    SELF = "self", "from spores of one plant"
    CROSS = "cross", "a hybrid of two"
    MIXED = "mixed", "sown together, not settled"
    APOGAMOUS = "apogamous", "same as its parent, though from spores"
    UNKNOWN = "unknown", "not known"


CLONE_ORIGINS = frozenset({Origin.DIVISION.value, Origin.APOGAMOUS.value})
SPORE_ORIGINS = frozenset({Origin.SELF.value, Origin.CROSS.value, Origin.MIXED.value})


class ParentageClass(models.Model):
    """Plants of one parentage — sibs of a sowing, pieces of one plant — and the facts they share.

    `key` is made of the origin and the first plants of the parents, so that it survives a rebuild.
    Pairs are bounds; equal ends are exact. `completeness` is NULL where unsettled parents leave it open.
    """

    key = models.CharField(max_length=64, unique=True)
    gen_min = models.PositiveIntegerField()
    gen_max = models.PositiveIntegerField()
    eq_lo = models.FloatField()
    eq_hi = models.FloatField()
    completeness = models.FloatField(null=True)
    f_lo = models.FloatField()
    f_hi = models.FloatField()

    class Meta:
        verbose_name_plural = "parentage classes"
        constraints = [
            models.CheckConstraint(
                name="class_bounds_in_order",
                condition=Q(gen_min__lte=models.F("gen_max"))
                & Q(eq_lo__lte=models.F("eq_hi"))
                & Q(f_lo__lte=models.F("f_hi")),
            )
        ]

    def __str__(self) -> str:
        return f"Parentage {self.pk}"


class ClassShare(models.Model):
    """How much of one species is in the plants of a class; no species: the share whose species is not known."""

    parentage = models.ForeignKey(ParentageClass, models.CASCADE, related_name="shares")
    species = models.ForeignKey("specimens.Name", models.CASCADE, null=True, related_name="+")
    lo = models.FloatField()
    hi = models.FloatField()

    class Meta:
        constraints = [
            models.UniqueConstraint(fields=["parentage", "species"], name="share_once_a_species"),
            models.UniqueConstraint(
                fields=["parentage"], condition=Q(species__isnull=True), name="one_share_not_known"
            ),
            models.CheckConstraint(
                name="share_in_bounds", condition=Q(lo__gte=0, hi__lte=1, lo__lte=models.F("hi"))
            ),
        ]

    def __str__(self) -> str:
        return f"{self.species or 'not known'}: {self.lo}–{self.hi}"


class LineageNode(models.Model):
    """A plant that can be a parent: a recorded one, the one behind a cultivar name, or one merely mentioned.

    `mention` names the record that mentions a plant nobody recorded (“source:12”). `species` is that of a
    plant where a line starts. `by_name` and `as_sown` say that the origin is presumed. `link_dropped`: the
    name alone made it a piece of its own descendant, which was not believed.
    """

    specimen = models.OneToOneField(
        "specimens.Specimen", models.CASCADE, null=True, related_name="lineage_node"
    )
    name = models.OneToOneField("specimens.Name", models.CASCADE, null=True, related_name="lineage_node")
    mention = models.CharField(max_length=120, null=True, unique=True)  # noqa: DJ001 — NULL: no mention
    origin = models.CharField(max_length=9, choices=Origin)
    species = models.ForeignKey("specimens.Name", models.CASCADE, null=True, related_name="founders")
    selfing = models.CharField(max_length=5, blank=True, default="")
    selfs_excluded = models.BooleanField(default=False)
    sport = models.BooleanField(default=False)
    by_name = models.BooleanField(default=False)
    as_sown = models.BooleanField(default=False)

    genet = models.ForeignKey(
        "self", models.SET_NULL, null=True, related_name="pieces", verbose_name="the first plant"
    )
    clone_line = models.ForeignKey("self", models.SET_NULL, null=True, related_name="line_members")
    clonal_steps = models.PositiveIntegerField(default=0)
    link_dropped = models.BooleanField(default=False)
    parentage = models.ForeignKey(ParentageClass, models.PROTECT, null=True, related_name="nodes")

    class Meta:
        constraints = [
            models.CheckConstraint(
                name="node_is_one_of_three",
                condition=Q(specimen__isnull=False, name__isnull=True, mention__isnull=True)
                | Q(specimen__isnull=True, name__isnull=False, mention__isnull=True)
                | Q(specimen__isnull=True, name__isnull=True, mention__isnull=False),
            ),
        ]

    def __str__(self) -> str:
        return str(self.specimen or self.name or self.mention)


class LineageParent(models.Model):
    """One parent or candidate of a node, in the order given; none: a plant not known."""

    node = models.ForeignKey(LineageNode, models.CASCADE, related_name="parents")
    parent = models.ForeignKey(LineageNode, models.CASCADE, null=True, related_name="children")
    order = models.PositiveSmallIntegerField()

    class Meta:
        ordering = ["node", "order"]
        constraints = [
            models.UniqueConstraint(fields=["node", "order"], name="parent_once_a_place"),
        ]

    def __str__(self) -> str:
        return f"{self.node}: {self.parent or 'not known'}"
