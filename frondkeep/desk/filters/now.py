"""Which filters are on, each with the address of the same list without it."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

import django_filters
from django.db.models import Model

NOT_FILTERS = frozenset({"sort", "as", "page"})
BY_DEFAULT = frozenset({("state", "growing")})


class FilterNow(NamedTuple):
    words: str
    address_without: str


def filters_now(filters: django_filters.FilterSet) -> list[FilterNow]:
    """One entry a filter that narrows the list, in the order of the form."""
    found = []
    for name, value in filters.form.cleaned_data.items():
        if name in NOT_FILTERS or not value or is_by_default(name, value):
            continue
        left = filters.data.copy()
        for gone in (name, "page"):
            left.pop(gone, None)
        found.append(FilterNow(words_for(filters, name, value), f"?{left.urlencode()}"))
    return found


def is_by_default(name: str, value: object) -> bool:
    return isinstance(value, str) and (name, value) in BY_DEFAULT


def words_for(filters: django_filters.FilterSet, name: str, value: object) -> str:
    if name == "q":
        return f"“{value}”"
    field = filters.form.fields[name]
    label = str(field.label)
    if value is True:
        return label.lower()
    return f"{label}: {value_words(field, value)}"


def value_words(field: object, value: object) -> str:
    if isinstance(value, Model):
        return field.label_from_instance(value)
    if isinstance(value, Iterable) and not isinstance(value, str):
        return ", ".join(field.label_from_instance(each) for each in value)
    choices = dict(getattr(field, "choices", ()))
    return str(choices.get(value, value))
