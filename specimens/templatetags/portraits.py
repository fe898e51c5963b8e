"""Portraits on pages, drawn from traits. Lists prepare their sitters beforehand and pass them on."""

from __future__ import annotations

from django import template
from django.utils.safestring import SafeString, mark_safe

from specimens.models import Name, Specimen
from specimens.portraits import draw_portrait, portrait_svg
from specimens.services.portrait_traits import Sitter, sitters_for_names, sitters_for_plants

register = template.Library()


@register.simple_tag
def portrait(sitter: Specimen | Name | Sitter, *, detail: str = "full", title: str = "") -> SafeString:
    """The portrait as SVG. A plant or name that a view gave a `sitter` attribute costs no query."""
    sitting = sitter if isinstance(sitter, Sitter) else getattr(sitter, "sitter", None) or _sitter_of(sitter)
    drawn = draw_portrait(sitting.traits, seed=sitting.seed, genus=sitting.genus or "fern")
    # The renderer escapes the title; everything else in it is numbers and its own words.
    return mark_safe(portrait_svg(drawn, title=title or "Portrait drawn from traits", detail=detail))  # noqa: S308


def _sitter_of(one: Specimen | Name) -> Sitter:
    return sitters_for_names([one])[one.pk] if isinstance(one, Name) else sitters_for_plants([one])[one.pk]
