"""A plant, or a piece of one, that went from one keeper's hands into another's, as both sides tell it."""

from __future__ import annotations

import uuid
from typing import TYPE_CHECKING

from django.db import models
from django.db.models import F, Q
from django.urls import reverse
from django.utils import timezone
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns
from specimens.models.propagation import Division

if TYPE_CHECKING:
    from frondkeep.society.models import User


class HandOverQuerySet(models.QuerySet["HandOver"]):
    def open(self) -> HandOverQuerySet:
        """Those that one side has told and the other has not answered, the tables' among them."""
        return self.filter(state__in=OPEN)

    def settled(self) -> HandOverQuerySet:
        """Those that were answered or taken back; what the curator is still asked about is among them."""
        return self.exclude(state__in=OPEN)

    def on_tables(self) -> HandOverQuerySet:
        """What was put on a meeting's table and nobody has taken; the order in which it was put there."""
        return self.filter(ON_TABLE, state=HandOver.State.OFFERED).order_by("pk")

    def waiting_for(self, user: User) -> HandOverQuerySet:
        """What this user is asked: offered to their keepers, claimed from them; the curator also what is
        to be settled."""
        mine = user.keeper_ids
        asked = Q(state=HandOver.State.OFFERED, receiver__in=mine) | Q(
            state=HandOver.State.CLAIMED, giver__in=mine
        )
        return self.filter(asked | Q(to_settle=True)) if user.is_curator else self.filter(asked)

    def visible_to(self, user: User) -> HandOverQuerySet:
        """Those this user gave or received; a curator every one. What lies on a table has a page of its own."""
        if user.is_curator:
            return self
        return self.filter(Q(giver__in=user.keeper_ids) | Q(receiver__in=user.keeper_ids))

    def with_page_parts(self) -> HandOverQuerySet:
        """With plants, their names, people and meeting, for lists and pages; no query more."""
        people = [f"{side}__{kind}" for side in ("giver", "receiver") for kind in ("member", "household")]
        plants = [f"{plant}__identification__name__accepted" for plant in ("plant", "piece")]
        return self.select_related(
            *people, *plants, "plant__sowing", "piece__sowing", "meeting", "rival__plant"
        ).prefetch_related("plant__sowing__sources__specimen__identification")

    def newest_first(self) -> HandOverQuerySet:
        return self.order_by("-told_at", "-pk")


class HandOver(models.Model):
    """What was handed over, by whom, to whom. Told by the giver it is offered, told by the receiver it is
    claimed, and the other side answers. `plant` is the giver's plant, handed over as a whole or a piece of it;
    `piece` is the receiver's record of that piece."""

    class What(models.TextChoices):
        PIECE = "piece", "a piece of it"
        PLANT = "plant", "the whole plant"

    class State(models.TextChoices):
        OFFERED = "offered", "waits for the receiver"
        CLAIMED = "claimed", "waits for the giver"
        AGREED = "agreed", "both agree"
        REFUSED = "refused", "not so, says the other side"
        WITHDRAWN = "withdrawn", "taken back"

    token = models.UUIDField(unique=True, default=uuid.uuid4, editable=False)
    what = models.CharField(max_length=5, choices=What)
    state = models.CharField(max_length=9, choices=State)
    plant = models.ForeignKey("specimens.Specimen", models.PROTECT, related_name="hand_overs")
    kind = models.CharField(
        "kind of piece", max_length=9, choices=Division.Kind, default=Division.Kind.PUP, blank=True
    )
    piece = models.ForeignKey(
        "specimens.Specimen", models.PROTECT, null=True, blank=True, related_name="came_by"
    )
    label_text = models.CharField("what its tag says", max_length=500, blank=True)
    giver = models.ForeignKey("society.Keeper", models.PROTECT, related_name="hand_overs_given")
    receiver = models.ForeignKey(
        "society.Keeper", models.PROTECT, null=True, blank=True, related_name="hand_overs_received"
    )
    # As the giver typed it: who reads the words need not know whether a keeper was found by them.
    receiver_words = models.CharField("to whom, in words", max_length=200, blank=True)
    meeting = models.ForeignKey("society.Meeting", models.SET_NULL, null=True, blank=True, related_name="+")
    on_table = models.BooleanField("put on the meeting’s table", default=False)
    handed = PartialDateColumns("when")
    # A claim of a piece of one plant where the giver told of a piece of another.
    rival = models.ForeignKey("self", models.SET_NULL, null=True, blank=True, related_name="rivals")
    to_settle = models.BooleanField("the curator is asked", default=False)
    told_by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    told_at = models.DateTimeField(default=timezone.now, editable=False)
    answered_by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    answered_at = models.DateTimeField(null=True, blank=True, editable=False)
    history = HistoricalRecords()

    objects = HandOverQuerySet.as_manager()

    class Meta:
        constraints = [
            models.CheckConstraint(
                name="hand_over_state_known",
                condition=Q(state__in=["offered", "claimed", "agreed", "refused", "withdrawn"]),
            ),
            models.CheckConstraint(
                name="hand_over_of_plant_or_piece",
                condition=Q(what="piece") | Q(what="plant", piece__isnull=True),
            ),
            models.CheckConstraint(
                name="hand_over_has_receiver_or_table",
                condition=Q(receiver__isnull=False) | ~Q(receiver_words="") | Q(on_table=True),
            ),
            models.CheckConstraint(
                name="hand_over_claimed_by_keeper",
                condition=~Q(state="claimed") | Q(receiver__isnull=False),
            ),
            models.CheckConstraint(
                name="hand_over_claimed_piece_on_record",
                condition=~Q(state="claimed", what="piece") | Q(piece__isnull=False),
            ),
            models.CheckConstraint(
                name="hand_over_agreed_to_somebody",
                condition=~Q(state="agreed") | Q(receiver__isnull=False) | ~Q(receiver_words=""),
            ),
            models.CheckConstraint(
                name="hand_over_agreed_piece_on_record",
                condition=~Q(state="agreed", what="piece", receiver__isnull=False) | Q(piece__isnull=False),
            ),
            models.CheckConstraint(
                name="hand_over_between_two",
                condition=Q(receiver__isnull=True) | ~Q(receiver=F("giver")),
            ),
            models.UniqueConstraint(
                fields=["piece"],
                condition=Q(piece__isnull=False, state__in=["claimed", "agreed"]),
                name="hand_over_piece_once",
            ),
            models.UniqueConstraint(
                fields=["plant"],
                condition=Q(what="plant", state__in=["offered", "claimed"]),
                name="one_open_hand_over_of_a_plant",
            ),
        ]
        indexes = [
            models.Index(fields=["receiver", "state"], name="hand_over_by_receiver"),
            models.Index(fields=["giver", "state"], name="hand_over_by_giver"),
        ]

    def __str__(self) -> str:
        what = "A piece of " if self.is_piece else ""
        return f"{what}{self.plant}, {self.state}"

    def get_absolute_url(self) -> str:
        return reverse("hand-over", args=[self.token])

    @property
    def is_piece(self) -> bool:
        return self.what == self.What.PIECE

    @property
    def is_open(self) -> bool:
        return self.state in OPEN

    @property
    def lies_on_table(self) -> bool:
        return self.state == self.State.OFFERED and self.on_table and self.receiver_id is None


OPEN = (HandOver.State.OFFERED, HandOver.State.CLAIMED)
ON_TABLE = Q(on_table=True, receiver__isnull=True)
