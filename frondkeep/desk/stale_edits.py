"""Two edits of one record: what stands now beside what the second person typed."""

from __future__ import annotations

from typing import NamedTuple

from django import forms
from django.db.models import Model

from specimens.naming.dates import PartialDate


class TwoVersions(NamedTuple):
    label: str
    now: str
    typed: str


def two_versions(form: forms.BaseForm, now: Model) -> list[TwoVersions]:
    """The fields of a valid form in which the record as it stands now differs from what was typed."""
    rows = []
    for name, value in form.cleaned_data.items():
        if name == "version" or form.fields[name].widget.is_hidden:
            continue
        stands = getattr(now, name)
        if words(stands) != words(value):
            rows.append(
                TwoVersions(str(form.fields[name].label), shown(form, name, stands), shown(form, name, value))
            )
    return rows


def shown(form: forms.BaseForm, name: str, value: object) -> str:
    choices = dict(getattr(form.fields[name], "choices", ())) if isinstance(value, str) else {}
    return str(choices.get(value) or words(value) or "nothing")


def words(value: object) -> str:
    if isinstance(value, PartialDate):
        return value.words
    return "" if value is None else str(value)


def with_version(form: forms.BaseForm, version: int) -> None:
    """Make a bound form carry the record's version of now, so that saving again is saving over it knowingly."""
    form.data = form.data.copy()
    form.data[form.add_prefix("version")] = version
