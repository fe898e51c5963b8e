"""Members, households, and the keepers that plants are recorded under."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.db import models
from django.db.models import Q
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns

if TYPE_CHECKING:
    from frondkeep.society.models.users import User


class Appearance(models.TextChoices):
    """How somebody who keeps plants appears to other members."""

    BY_NAME = "name", "by name"
    A_MEMBER = "member", "as “a member”"
    CURATOR_ONLY = "curator", "to the curator only"


class Household(models.Model):
    """People who keep their plants together; each of them edits."""

    name = models.CharField(max_length=120, unique=True)
    appears = models.CharField(max_length=8, choices=Appearance, default=Appearance.A_MEMBER)
    history = HistoricalRecords()

    class Meta:
        ordering = ["name"]

    def __str__(self) -> str:
        return self.name


class Member(models.Model):
    """A person of the society; may have no sign-in (the curator then logs for them)."""

    user = models.OneToOneField("society.User", models.SET_NULL, null=True, blank=True, related_name="member")
    name = models.CharField(max_length=120)
    household = models.ForeignKey(Household, models.SET_NULL, null=True, blank=True, related_name="members")
    number = models.CharField("membership number", max_length=30, blank=True)
    joined = PartialDateColumns()
    left = PartialDateColumns()
    appears = models.CharField(max_length=8, choices=Appearance, default=Appearance.A_MEMBER)
    # Contact data are the membership secretary's alone.
    email = models.EmailField(blank=True)
    phone = models.CharField(max_length=60, blank=True)
    address = models.TextField(blank=True)
    notes = models.TextField(blank=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["name", "pk"]
        constraints = [
            models.UniqueConstraint(fields=["number"], condition=~Q(number=""), name="member_number_once"),
        ]

    def __str__(self) -> str:
        return self.name


class KeeperQuerySet(models.QuerySet["Keeper"]):
    def of_user(self, user: User) -> KeeperQuerySet:
        """The keepers a user acts for: their own and their household's. Nobody's for a stranger."""
        if not user.is_authenticated:
            return self.none()
        return self.filter(Q(member__user=user) | Q(household__members__user=user)).distinct()

    def with_people(self) -> KeeperQuerySet:
        """With the member and household that a keeper's name is read from."""
        return self.select_related("member", "household")


class Keeper(models.Model):
    """Who may keep a plant: a member, a household, or the society itself (one row)."""

    class Kind(models.TextChoices):
        MEMBER = "member", "a member"
        HOUSEHOLD = "household", "a household"
        SOCIETY = "society", "the society"

    kind = models.CharField(max_length=9, choices=Kind)
    member = models.OneToOneField(Member, models.CASCADE, null=True, blank=True)
    household = models.OneToOneField(Household, models.CASCADE, null=True, blank=True)

    objects = KeeperQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(
                name="keeper_is_one_of_three",
                condition=Q(kind="member", member__isnull=False, household__isnull=True)
                | Q(kind="household", member__isnull=True, household__isnull=False)
                | Q(kind="society", member__isnull=True, household__isnull=True),
            ),
            models.UniqueConstraint(fields=["kind"], condition=Q(kind="society"), name="one_society_keeper"),
        ]

    def __str__(self) -> str:
        return self.name

    @property
    def name(self) -> str:
        """The true name; only `shown_to` decides who reads it."""
        return str(self.member or self.household or "The society")

    @property
    def appears(self) -> str:
        person = self.member or self.household
        return person.appears if person else Appearance.BY_NAME

    def shown_to(self, user: User) -> str:
        """The name as this user may read it: by name, or “a member”."""
        if self.kind == self.Kind.SOCIETY:
            return "the society"
        if user.acts_for(self):
            return "you" if self.kind == self.Kind.MEMBER else self.name
        if user.is_curator or self.appears == Appearance.BY_NAME:
            return self.name
        return "a member"
