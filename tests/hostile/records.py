"""All that is on record, so that a test can say: nothing was changed."""

from __future__ import annotations

from django.apps import apps
from django.core.files.storage import default_storage
from django.db.models import CharField, Model, Q
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
    """Values longer than their column: SQLite keeps them, PostgreSQL would break off with an error.

    Histories repeat the columns of their records and are not asked; one query a table.
    """
    return [
        f"{model._meta.label}.{field.name}: {len(row[field.name])} > {field.max_length}"
        for model, fields in limited_columns()
        for row in rows_too_long(model, fields)
        for field in fields
        if len(row[field.name]) > field.max_length
    ]


def limited_columns() -> list[tuple[type[Model], list[CharField]]]:
    found = [
        (model, [one for one in model._meta.concrete_fields if isinstance(one, CharField) and one.max_length])
        for model in apps.get_models()
        if model._meta.app_label not in OF_VISITS and not model.__name__.startswith("Historical")
    ]
    return [(model, fields) for model, fields in found if fields]


def rows_too_long(model: type[Model], fields: list[CharField]) -> list[dict[str, str]]:
    sizes = {f"size_of_{one.name}": Length(one.name) for one in fields}
    over = Q()
    for one in fields:
        over |= Q(**{f"size_of_{one.name}__gt": one.max_length})
    return list(model._base_manager.alias(**sizes).filter(over).values(*(one.name for one in fields)))


def photo_files() -> set[str]:
    try:
        return set(default_storage.listdir("")[1])
    except FileNotFoundError:
        return set()
