"""Names on pages: Latin italic and marked as Latin, everything else upright. The only place that marks names up."""

from __future__ import annotations

from collections.abc import Iterable

from django import template
from django.utils.html import format_html, format_html_join
from django.utils.safestring import SafeString

from specimens.models import Identification, Name, Specimen
from specimens.naming.names import NameParts, Run, name_runs
from specimens.services.shown_names import shown_name

register = template.Library()


def mark_up(runs: Iterable[Run]) -> SafeString:
    """The runs in one span, so that a name keeps its face wherever it stands."""
    marked = format_html_join(
        "",
        "{}",
        (
            (format_html('<i lang="la">{}</i>', run.text) if run.style == "italic" else run.text,)
            for run in runs
        ),
    )
    return format_html('<span class="name">{}</span>', marked)


@register.simple_tag
def name(
    named: Name | Identification | Specimen | NameParts | None, *, short: bool = False, author: bool = False
) -> SafeString:
    """The name of a name, of an identification (with its doubt) or of a plant (as accepted today)."""
    return mark_up(runs_of(named, short=short, author=author))


def runs_of(named: object, *, short: bool = False, author: bool = False) -> tuple[Run, ...]:
    if isinstance(named, Specimen):
        return shown_name(named, short_genus=short).runs
    if isinstance(named, Identification):
        if named.name is None:
            return (Run("not named", "roman"),)
        return named.name.runs(qualifier=named.qualifier, short_genus=short)
    if isinstance(named, Name):
        return named.runs(short_genus=short, with_author=author)
    if isinstance(named, NameParts):
        return name_runs(named, short_genus=short, with_author=author)
    if isinstance(named, tuple):
        return named
    return (Run("not named", "roman"),)


@register.simple_tag
def name_as(specimen: Specimen) -> SafeString:
    """“as ‘Old Name’” where a plant's own name is no longer the accepted one, else nothing."""
    former = shown_name(specimen).former
    return format_html("as {}", mark_up(former)) if former else SafeString("")
