"""Dates on forms: what will be stored for the words somebody typed."""

from __future__ import annotations

from django import template
from django.forms import BoundField

from specimens.naming.dates import PartialDate, echo_date

register = template.Library()


@register.simple_tag
def will_store(field: BoundField) -> str:
    """“We will store …” for a date that was read on a form shown again; '' where there is none, or a mistake in it."""
    read = getattr(field.form, "cleaned_data", {}).get(field.name)
    return echo_date(read) if isinstance(read, PartialDate) and read.words else ""
