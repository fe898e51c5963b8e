"""Every component on one page, with invented plants and a form that is partly wrong."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace
from typing import Any

from django import forms
from django.core.paginator import Paginator
from django.template import Context, engines
from django.test import RequestFactory

from specimens.naming.names import NameParts
from specimens.services.portrait_traits import Sitter

NAV = [
    (label, f"/{number}/", number == 4)
    for number, label in enumerate(
        [
            "Log plants",
            "Mine",
            "The society’s plants",
            "Names",
            "Perhaps the same plant",
            "Propagation",
            "Shows",
            "Help",
        ]
    )
]
WAYS = [("piece", "A pup or piece"), ("spores", "From spores"), ("other", "Bought or given")]


class Logged(forms.Form):
    label = forms.CharField(label="What the tag says", help_text="Letter for letter, mistakes and all.")
    came = forms.ChoiceField(label="How it came", choices=WAYS, widget=forms.RadioSelect)
    packet = forms.ChoiceField(label="From which packet", choices=[("", "choose one"), ("1", "2026-0142-E")])
    empty = forms.BooleanField(label="The packet is empty now", required=False)
    notes = forms.CharField(label="Notes", widget=forms.Textarea, required=False)


def plant(code: str, parts: NameParts, **traits: str) -> SimpleNamespace:
    sitter = Sitter(seed=code, genus=parts.genus, traits=traits)
    return SimpleNamespace(code=code, parts=parts, sitter=sitter, get_absolute_url=f"/plants/{code}/")


PLANTS = [
    plant("2019-0088-B", NameParts(genus="Platycerium", cultivar="Silver Tassel"), shield_fronds="ball"),
    plant("1998-0001-M", NameParts(genus="Platycerium", species="veitchii"), shield_fronds="basket"),
    plant(
        "2020-0042-C", NameParts(genus="Asplenium", species="scolopendrium", cultivar="Crispum Longifolium")
    ),
]


def gallery(**more: Any) -> str:
    """The page's HTML. Static files must be served under their own names."""
    request = RequestFactory().get("/", {"page": 2})
    request.user = SimpleNamespace(is_authenticated=True)
    engine = engines["django"].engine
    template = engine.from_string((Path(__file__).parent / "gallery.html").read_text())
    shown = {
        "nav": NAV,
        "signed_in_as": "Curator: I. Marsh",
        "form": Logged({"label": "silverd tassle"}),
        "plants": PLANTS,
        "page_obj": Paginator(range(40), 10).page(2),
        "request": request,
    }
    context = Context(shown | more)
    # A full RequestContext would ask the database who is signed in.
    context.request = request
    return template.render(context)
