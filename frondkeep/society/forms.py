"""Form fields that every part uses: a partial date, and the id that keeps a form from being taken twice."""

from __future__ import annotations

import uuid
from typing import Any

from django import forms
from django.conf import settings
from django.utils import timezone

from specimens.naming.dates import DateNotRead, PartialDate, read_date


class PartialDateFormField(forms.CharField):
    """Words like “spring 1998”, cleaned to a PartialDate; empty is no date."""

    def __init__(self, *, future_ok: bool = False, **kwargs: Any) -> None:
        self.future_ok = future_ok
        kwargs.setdefault("required", False)
        kwargs.setdefault("max_length", 80)
        kwargs.setdefault("help_text", "Words or numbers: “spring 1998”, “12/6/2024”, “about 1950”.")
        super().__init__(**kwargs)

    def prepare_value(self, value: Any) -> Any:
        return value.words if isinstance(value, PartialDate) else value

    def clean(self, value: Any) -> PartialDate:
        words = super().clean(value)
        if not words:
            return PartialDate()
        try:
            return read_growers_date(words, future_ok=self.future_ok)
        except DateNotRead as problem:
            raise forms.ValidationError(str(problem), code="date") from problem


def read_growers_date(words: str, *, future_ok: bool = False) -> PartialDate:
    """The date that somebody of this society means by these words. Raises DateNotRead."""
    return read_date(
        words,
        today=timezone.localdate(),
        day_first=settings.DATES_DAY_FIRST,
        southern=settings.SOUTHERN_HEMISPHERE,
        future_ok=future_ok,
    )


class SubmissionForm(forms.Form):
    """A form that is taken once: it carries an id made when it was first shown."""

    submission = forms.UUIDField(widget=forms.HiddenInput, initial=uuid.uuid4)
