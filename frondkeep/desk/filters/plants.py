"""The filters of the society's plants."""

from __future__ import annotations

from datetime import date

import django_filters
from django import forms
from django.db.models import Exists, F, OuterRef, Q, QuerySet
from django.db.models.functions import Coalesce
from django.http import HttpRequest

from frondkeep.desk.finding import known_keepers, visible_photos
from frondkeep.desk.searching.plants import plants_matching
from frondkeep.society.models import Keeper
from specimens.models import Came, Keeping, Name, Rank, Specimen, State, TraitRecord, TraitState

ANY_STATE = "any"
LONGEST_KEY = 18
STATES = [(State.GROWING.value, "growing"), *State.choices[1:-1], (ANY_STATE, "any")]
BY_NAME = Coalesce("identification__name__accepted__sort_text", "identification__name__sort_text")
SORTS = {
    "new": ("newest first", ("-logged_at", "-pk")),
    "name": ("by name", (BY_NAME.asc(nulls_last=True), "code")),
    "code": ("by code", ("code",)),
    "old": ("longest kept first", (F("acquired_earliest").asc(nulls_last=True), "code")),
}


class KeeperChoices(django_filters.fields.ModelChoiceField):
    """Keepers by the name this reader may know."""

    reader = None

    def label_from_instance(self, keeper: Keeper) -> str:
        return keeper.shown_to(self.reader)


class KeeperFilter(django_filters.ModelChoiceFilter):
    field_class = KeeperChoices

    @property
    def field(self) -> KeeperChoices:
        field = super().field
        field.reader = self.parent.request.user
        return field


class TraitChoices(django_filters.fields.ModelMultipleChoiceField):
    def label_from_instance(self, state: TraitState) -> str:
        return f"{state.trait.label}: {state.label}"

    def _check_values(self, value: list[str]) -> QuerySet[TraitState]:
        """No state has a key of more digits than this; SQLite cannot even be asked for one."""
        for key in value:
            if len(str(key)) > LONGEST_KEY:
                raise forms.ValidationError(self.error_messages["invalid_pk_value"], params={"pk": key})
        return super()._check_values(value)


class TraitFilter(django_filters.ModelMultipleChoiceFilter):
    field_class = TraitChoices


def keepers_to_choose(request: HttpRequest) -> QuerySet[Keeper]:
    return known_keepers(request.user).order_by("kind", "member__name", "household__name")


class PlantFilters(django_filters.FilterSet):
    """Narrow plants by what the address asks; without `state` only growing ones are left."""

    q = django_filters.CharFilter(label="Name, code, number or words of the tag", method="matching")
    genus = django_filters.ModelChoiceFilter(
        label="Genus",
        queryset=lambda request: genera(),
        method="of_genus",
        empty_label="any",
    )
    natural_group = django_filters.ChoiceFilter(
        label="Natural group", choices=lambda: natural_groups(), method="of_group", empty_label="any"
    )
    came = django_filters.ChoiceFilter(label="How it came", choices=Came.choices, empty_label="any")
    state = django_filters.ChoiceFilter(
        label="State", choices=STATES, method="in_state", empty_label=None, null_label=None
    )
    keeper = KeeperFilter(
        label="Kept by", queryset=keepers_to_choose, method="with_keeper", empty_label="anybody"
    )
    year = django_filters.NumberFilter(
        label="Came in the year",
        method="of_year",
        min_value=1800,
        max_value=2199,
        widget=forms.TextInput(attrs={"inputmode": "numeric", "maxlength": 4}),
    )
    traits = TraitFilter(
        label="Traits",
        queryset=lambda request: TraitState.objects.select_related("trait").order_by("trait__order", "order"),
        method="with_traits",
        widget=forms.CheckboxSelectMultiple,
    )
    photo = django_filters.BooleanFilter(
        label="With a photograph", method="with_photo", widget=forms.CheckboxInput
    )
    sort = django_filters.ChoiceFilter(
        label="Order",
        choices=[(key, words) for key, (words, _) in SORTS.items()],
        method="left_to_the_end",
        empty_label=None,
    )

    class Meta:
        model = Specimen
        fields: list[str] = []

    def filter_queryset(self, queryset: QuerySet[Specimen]) -> QuerySet[Specimen]:
        """All filters, growing plants where no state is asked for, in the order asked for."""
        found = super().filter_queryset(queryset)
        if not self.form.cleaned_data.get("state"):
            found = found.growing()
        _, order = SORTS[self.form.cleaned_data.get("sort") or "new"]
        return found.order_by(*order)

    def matching(self, plants: QuerySet[Specimen], name: str, text: str) -> QuerySet[Specimen]:
        return plants_matching(plants, text, reader=self.request.user)

    def of_genus(self, plants: QuerySet[Specimen], name: str, genus: Name) -> QuerySet[Specimen]:
        thought = "identification__name"
        return plants.filter(
            Q(**{f"{thought}__accepted__genus": genus})
            | Q(**{f"{thought}__accepted": genus})
            | Q(**{f"{thought}__genus": genus})
            | Q(**{thought: genus})
        )

    def of_group(self, plants: QuerySet[Specimen], name: str, group: str) -> QuerySet[Specimen]:
        places = ("name", "name__parent", "name__accepted", "name__accepted__parent")
        found = Q()
        for place in places:
            found |= Q(**{f"identification__{place}__natural_group": group})
        return plants.filter(found)

    def in_state(self, plants: QuerySet[Specimen], name: str, state: str) -> QuerySet[Specimen]:
        return plants if state == ANY_STATE else plants.filter(state=state)

    def with_keeper(self, plants: QuerySet[Specimen], name: str, keeper: Keeper) -> QuerySet[Specimen]:
        """The plants of one keeper: now, or to the end for those that are no more."""
        kept = Keeping.objects.filter(specimen=OuterRef("pk"), keeper=keeper)
        now = Q(Exists(kept.filter(is_open=True)))
        return plants.filter(now | ~Q(state=State.GROWING) & Q(Exists(kept)))

    def of_year(self, plants: QuerySet[Specimen], name: str, year: int) -> QuerySet[Specimen]:
        """Plants that may have come in this year; an open end does not count."""
        year = int(year)
        return plants.filter(acquired_earliest__lte=date(year, 12, 31), acquired_latest__gte=date(year, 1, 1))

    def with_traits(
        self, plants: QuerySet[Specimen], name: str, states: list[TraitState]
    ) -> QuerySet[Specimen]:
        """Any of the states chosen of one trait, and so for each trait, on the plant or on its name."""
        by_trait: dict[int, list[int]] = {}
        for state in states:
            by_trait.setdefault(state.trait_id, []).append(state.pk)
        for chosen in by_trait.values():
            plants = plants.filter(showing(chosen))
        return plants

    def with_photo(self, plants: QuerySet[Specimen], name: str, wanted: bool) -> QuerySet[Specimen]:
        photos = visible_photos(self.request.user).filter(specimen=OuterRef("pk"), is_drawing=False)
        return plants.filter(Exists(photos)) if wanted else plants

    def left_to_the_end(self, plants: QuerySet[Specimen], name: str, value: str) -> QuerySet[Specimen]:
        return plants


def showing(states: list[int]) -> Q:
    """One of the states is on record of the plant, of its name, or of the name accepted for it."""
    thought = "identification__name"
    of_plant = Q(specimen=OuterRef("pk"))
    of_name = Q(name=OuterRef(thought)) | Q(name=OuterRef(f"{thought}__accepted"))
    return Q(Exists(TraitRecord.objects.filter(of_plant | of_name, state__in=states)))


def genera() -> QuerySet[Name]:
    return Name.objects.standing().filter(rank__in=[Rank.GENUS, Rank.NOTHOGENUS]).in_reading_order()


def natural_groups() -> list[tuple[str, str]]:
    groups = Name.objects.standing().exclude(natural_group="").values_list("natural_group", flat=True)
    return [(group, group) for group in groups.distinct().order_by("natural_group")]
