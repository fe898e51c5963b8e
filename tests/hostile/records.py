"""All that is on record, so that a test can say: nothing was changed."""

from __future__ import annotations

from django.apps import apps
from django.core.files.storage import default_storage
from django.db.models import CharField
from django.db.models.functions import Length

# What a visit may write without touching a record: who is signed in, and who tried to.
OF_VISITS = frozenset({"sessions", "axes", "contenttypes", "auth"})

Records = dict[str, list[tuple[object, ...]]]


def records() -> Records:
    """Every row of every table, histories too; a queryset's `==` would compare nothing."""
    return {
        model._meta.label: sorted(model._base_manager.values_list(), key=repr)
        for model in apps.get_models(include_auto_created=True)
        if model._meta.app_label not in OF_VISITS
    }


def changed(before: Records) -> dict[str, list[tuple[object, ...]]]:
    """The rows that are not as they were, by table; empty where all is as it was."""
    now = records()
    return {
        label: [row for row in now[label] if row not in before[label]] or before[label]
        for label in now
        if now[label] != before[label]
    }


def too_long() -> list[str]:
    """Values longer than their column: SQLite keeps them, PostgreSQL would break off with an error."""
    return [
        f"{model._meta.label}.{field.name}: {len(value)} > {field.max_length}"
        for model in apps.get_models()
        for field in model._meta.concrete_fields
        if isinstance(field, CharField) and field.max_length and model._meta.app_label not in OF_VISITS
        for value in model._base_manager.annotate(size=Length(field.name))
        .filter(size__gt=field.max_length)
        .values_list(field.name, flat=True)
    ]


def photo_files() -> set[str]:
    try:
        return set(default_storage.listdir("")[1])
    except FileNotFoundError:
        return set()
