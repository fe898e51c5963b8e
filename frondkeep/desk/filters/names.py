"""The filters of the list of names."""

from __future__ import annotations

import django_filters
from django import forms
from django.db.models import Case, F, Q, QuerySet, When

from frondkeep.desk.filters.plants import genera
from frondkeep.desk.searching.names import names_like
from specimens.models import INFRASPECIFIC_RANKS, SPECIES_RANKS, Name, Rank

KINDS = {
    "cultivars": ("cultivar names", (Rank.CULTIVAR,)),
    "species": ("species", SPECIES_RANKS),
    "below": ("below species", INFRASPECIFIC_RANKS),
    "hybrids": ("hybrids", (Rank.NOTHOSPECIES, Rank.FORMULA)),
    "genera": ("genera", (Rank.GENUS, Rank.NOTHOGENUS)),
}


class NameFilters(django_filters.FilterSet):
    """Narrow names by what the address asks. What was typed comes best first, everything else as an index does."""

    q = django_filters.CharFilter(label="Name", method="matching")
    genus = django_filters.ModelChoiceFilter(
        label="Genus", queryset=lambda request: genera(), empty_label="any"
    )
    kind = django_filters.ChoiceFilter(
        label="Kind",
        choices=[(key, words) for key, (words, _) in KINDS.items()],
        method="of_kind",
        empty_label="any",
    )
    old = django_filters.BooleanFilter(
        label="Old names and genera too", method="left_to_the_end", widget=forms.CheckboxInput
    )
    unchecked = django_filters.BooleanFilter(
        label="Not yet checked", method="not_yet_checked", widget=forms.CheckboxInput
    )

    class Meta:
        model = Name
        fields: list[str] = []

    def filter_queryset(self, queryset: QuerySet[Name]) -> QuerySet[Name]:
        """All filters; where nothing is asked for, only what is accepted today, below genera."""
        found = super().filter_queryset(queryset)
        asked = self.form.cleaned_data
        if asked.get("old") or asked.get("q") or asked.get("kind") or asked.get("unchecked"):
            return found
        accepted = Q(accepted__isnull=True) | Q(accepted=F("pk"))
        return found.filter(accepted).exclude(rank__in=KINDS["genera"][1])

    def left_to_the_end(self, names: QuerySet[Name], field: str, value: bool) -> QuerySet[Name]:
        return names

    def matching(self, names: QuerySet[Name], field: str, text: str) -> QuerySet[Name]:
        ids = names_like(text)
        best_first = Case(*(When(pk=pk, then=place) for place, pk in enumerate(ids)), default=len(ids))
        return names.filter(pk__in=ids).order_by(best_first, "sort_text")

    def of_kind(self, names: QuerySet[Name], field: str, kind: str) -> QuerySet[Name]:
        return names.filter(rank__in=KINDS[kind][1])

    def not_yet_checked(self, names: QuerySet[Name], field: str, wanted: bool) -> QuerySet[Name]:
        return names.filter(checked=False) if wanted else names
