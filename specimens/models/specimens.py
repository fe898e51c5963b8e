"""A plant in somebody's hands: what its tag says, how it came, who keeps it, what it is thought to be."""

from __future__ import annotations

from typing import TYPE_CHECKING

from django.db import models
from django.db.models import Exists, OuterRef, Prefetch, Q
from django.urls import reverse
from django.utils import timezone
from simple_history.models import HistoricalRecords

from frondkeep.society.fields import PartialDateColumns

if TYPE_CHECKING:
    from frondkeep.society.models import Keeper, User


class Holds(models.TextChoices):
    ONE = "one", "one plant"
    SEVERAL = "several", "several of one sowing"
    KINDS = "kinds", "several kinds"
    NOT_KNOWN = "not known", "not known"


class Came(models.TextChoices):
    """How a plant came: exactly one, with the link that belongs to it."""

    PIECE = "piece", "a pup or piece"
    SOWING = "sowing", "from spores"
    OUTSIDE = "outside", "bought or given"
    WILD = "wild", "collected wild"
    NOT_KNOWN = "not known", "don’t know"


class State(models.TextChoices):
    GROWING = "growing", "growing"
    DEAD = "dead", "dead"
    LEFT = "left", "left the society"
    LOST = "lost", "cannot be found"
    STOLEN = "stolen", "stolen"
    MISTAKE = "mistake", "entered by mistake"


class SeenBy(models.TextChoices):
    MEMBERS = "members", "all members"
    KEEPER = "keeper", "only me, my household and the curator"


class SpecimenQuerySet(models.QuerySet["Specimen"]):
    def standing(self) -> SpecimenQuerySet:
        """Without records entered by mistake."""
        return self.exclude(state=State.MISTAKE)

    def growing(self) -> SpecimenQuerySet:
        return self.filter(state=State.GROWING)

    def kept_by(self, keeper_ids: frozenset[int]) -> SpecimenQuerySet:
        """Plants in the hands of these keepers now."""
        open_keeping = Keeping.objects.filter(specimen=OuterRef("pk"), is_open=True, keeper__in=keeper_ids)
        return self.filter(Exists(open_keeping))

    def mine(self, user: User) -> SpecimenQuerySet:
        """Plants that a user or their household keeps now."""
        return self.kept_by(user.keeper_ids)

    def visible_to(self, user: User) -> SpecimenQuerySet:
        """Plants whose page this user may open: shared ones and their own; a curator sees every one."""
        if user.is_curator:
            return self
        shared = Q(seen_by=SeenBy.MEMBERS) & ~Q(state=State.MISTAKE)
        return self.filter(shared | Q(in_hands_of(user.keeper_ids)))

    def editable_by(self, user: User) -> SpecimenQuerySet:
        """Plants this user may change: their own and their household's, ended ones too; a curator every one."""
        return self if user.is_curator else self.owned_by(user)

    def owned_by(self, user: User) -> SpecimenQuerySet:
        """Plants that a user or their household keeps now, or kept until they died, left or were stolen."""
        return self.filter(in_hands_of(user.keeper_ids))

    def with_page_parts(self) -> SpecimenQuerySet:
        """With the name, its accepted name and the keeper now (`open_keepings`), for lists and sentences."""
        return self.select_related(
            "identification__name__accepted",
            "division__parent",
            "sowing",
            "meeting",
            "from_keeper__member",
            "from_keeper__household",
        ).prefetch_related(
            "sowing__sources__specimen__identification",
            Prefetch(
                "keepings",
                Keeping.objects.filter(is_open=True).select_related("keeper__member", "keeper__household"),
                to_attr="open_keepings",
            ),
        )

    def newest_first(self) -> SpecimenQuerySet:
        return self.order_by("-logged_at", "-pk")


def in_hands_of(keeper_ids: frozenset[int]) -> Exists:
    """Whether these keepers keep a plant now, or kept it to its end: nobody kept it after them."""
    later = Keeping.objects.filter(specimen=OuterRef("specimen"), pk__gt=OuterRef("pk"))
    to_its_end = ~Q(specimen__state__in=[State.GROWING, State.LOST]) & ~Exists(later)
    return Exists(
        Keeping.objects.filter(Q(is_open=True) | to_its_end, specimen=OuterRef("pk"), keeper__in=keeper_ids)
    )


class Specimen(models.Model):
    """One plant (or pot) under one code. Its label is kept letter for letter, apart from what it is thought to be."""

    code = models.CharField(max_length=20, unique=True, editable=False)
    holds = models.CharField(max_length=9, choices=Holds, default=Holds.ONE)
    label_text = models.CharField("what the tag says", max_length=500, blank=True)
    came = models.CharField("how it came", max_length=9, choices=Came)
    division = models.ForeignKey(
        "specimens.Division", models.PROTECT, null=True, blank=True, related_name="specimens"
    )
    sowing = models.ForeignKey(
        "specimens.SporeSowing", models.PROTECT, null=True, blank=True, related_name="specimens"
    )
    acquired = PartialDateColumns("when it came")
    from_keeper = models.ForeignKey(
        "society.Keeper", models.SET_NULL, null=True, blank=True, related_name="gave"
    )
    from_words = models.CharField("from whom, in words", max_length=200, blank=True)
    meeting = models.ForeignKey(
        "society.Meeting", models.SET_NULL, null=True, blank=True, related_name="specimens"
    )
    state = models.CharField(max_length=7, choices=State, default=State.GROWING)
    state_reason = models.CharField(max_length=300, blank=True)
    ended = PartialDateColumns("when it died or left")
    last_seen_alive = models.DateField(null=True, blank=True)
    growing_place = models.CharField("growing place (private)", max_length=200, blank=True)
    mount = models.CharField(max_length=120, blank=True)
    society_number = models.CharField("the society’s old number", max_length=40, blank=True, db_index=True)
    own_number = models.CharField("the keeper’s own number", max_length=40, blank=True)
    seen_by = models.CharField("who may see it", max_length=7, choices=SeenBy, default=SeenBy.MEMBERS)
    now_with = models.CharField("now with (lent, at a show)", max_length=120, blank=True)
    notes = models.TextField(blank=True)
    identification = models.ForeignKey(
        "specimens.Identification", models.SET_NULL, null=True, blank=True, editable=False, related_name="+"
    )
    import_key = models.CharField(max_length=64, blank=True, editable=False, db_index=True)
    logged_by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    logged_at = models.DateTimeField(default=timezone.now, editable=False)
    version = models.PositiveIntegerField(default=1, editable=False)
    history = HistoricalRecords()

    objects = SpecimenQuerySet.as_manager()

    class Meta:
        ordering = ["code"]
        constraints = [
            models.CheckConstraint(
                name="specimen_came_one_way",
                condition=Q(came="piece", division__isnull=False, sowing__isnull=True)
                | Q(came="sowing", division__isnull=True, sowing__isnull=False)
                | Q(came__in=["outside", "wild", "not known"], division__isnull=True, sowing__isnull=True),
            ),
            models.UniqueConstraint(
                fields=["import_key"], condition=~Q(import_key=""), name="specimen_imported_once"
            ),
        ]

    def __str__(self) -> str:
        return self.code

    def get_absolute_url(self) -> str:
        return reverse("plant", args=[self.code])

    @property
    def is_growing(self) -> bool:
        return self.state == State.GROWING

    @property
    def keeper(self) -> Keeper | None:
        """Who keeps it now (one query, unless fetched by `with_page_parts`); None when nobody does."""
        kept = getattr(self, "open_keepings", None)
        if kept is None:
            kept = list(
                self.keepings.filter(is_open=True).select_related("keeper__member", "keeper__household")
            )
        return kept[0].keeper if kept else None


class Keeping(models.Model):
    """A plant in one keeper's hands, from then to then; one is open at a time."""

    specimen = models.ForeignKey(Specimen, models.CASCADE, related_name="keepings")
    keeper = models.ForeignKey("society.Keeper", models.PROTECT, related_name="keepings")
    since = PartialDateColumns()
    until = PartialDateColumns()
    is_open = models.BooleanField(default=True)
    history = HistoricalRecords()

    class Meta:
        ordering = ["specimen", "pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["specimen"], condition=Q(is_open=True), name="one_keeper_at_a_time"
            )
        ]

    def __str__(self) -> str:
        return f"{self.specimen} with {self.keeper}"


class Identification(models.Model):
    """What somebody thought a plant to be, and how they knew. Never edited, only followed by another."""

    class Qualifier(models.TextChoices):
        NONE = "", "—"
        CF = "cf.", "probably"
        AFF = "aff.", "close to, but different"
        DOUBT = "?", "not sure"

    class Ground(models.TextChoices):
        LABEL = "label", "from its tag"
        LOOKS = "looks", "by its looks"
        COMPARED = "compared", "compared with a known plant"
        DNA = "dna", "by DNA"

    class Standing(models.TextChoices):
        CURRENT = "current", "thought now"
        EARLIER = "earlier", "formerly thought"
        PROPOSED = "proposed", "proposed, waits for the curator"

    specimen = models.ForeignKey(Specimen, models.CASCADE, related_name="identifications")
    name = models.ForeignKey(
        "specimens.Name", models.PROTECT, null=True, blank=True, related_name="identifications"
    )
    qualifier = models.CharField(max_length=4, choices=Qualifier, blank=True, default="")
    ground = models.CharField("how do you know?", max_length=8, choices=Ground, default=Ground.LABEL)
    by = models.ForeignKey("society.User", models.SET_NULL, null=True, blank=True, related_name="+")
    by_words = models.CharField(max_length=120, blank=True)
    by_curator = models.BooleanField(default=False)
    on = PartialDateColumns()
    treatment = models.ForeignKey(
        "specimens.Treatment", models.SET_NULL, null=True, blank=True, related_name="+"
    )
    remarks = models.TextField(blank=True)
    standing = models.CharField(max_length=8, choices=Standing, default=Standing.CURRENT)
    at = models.DateTimeField(default=timezone.now, editable=False)
    history = HistoricalRecords()

    class Meta:
        ordering = ["specimen", "-at", "-pk"]
        constraints = [
            models.UniqueConstraint(
                fields=["specimen"], condition=Q(standing="current"), name="one_current_identification"
            ),
        ]

    def __str__(self) -> str:
        return f"{self.specimen}: {self.name or 'not named'}"

    @property
    def is_firm(self) -> bool:
        """What a curator or DNA has said is replaced only by a curator."""
        return self.by_curator or self.ground == self.Ground.DNA
