"""One field of a form: label above, hint under, error beside, all of it said together."""

from __future__ import annotations

from typing import Any

import pytest
from django import forms
from django.template.loader import render_to_string

from tests.look.test_base_template import Elements

WAYS = [("piece", "A pup or piece"), ("spores", "From spores")]


class Sowing(forms.Form):
    label = forms.CharField(label="What the tag says", help_text="Letter for letter.")
    came = forms.ChoiceField(
        label="How it came", choices=WAYS, widget=forms.RadioSelect, help_text="One of them."
    )
    empty = forms.BooleanField(label="The packet is empty now")
    seen = forms.MultipleChoiceField(label="Seen", choices=WAYS, widget=forms.CheckboxSelectMultiple)
    token = forms.CharField(widget=forms.HiddenInput)


def shown(form: forms.Form, name: str, **more: Any) -> Elements:
    return Elements(render_to_string("components/field.html", {"field": form[name], **more}))


@pytest.fixture
def nothing_filled_in() -> Sowing:
    return Sowing({})


def test_a_label_points_to_its_box_and_the_box_to_its_hint() -> None:
    page = shown(Sowing(), "label")
    [box], [label] = page.named("input"), page.named("label")
    assert label["for"] == box["id"]
    assert [hint["id"] for hint in page.named("p")] == [box["aria-describedby"]]


def test_a_wrong_box_is_described_by_hint_and_error(nothing_filled_in: Sowing) -> None:
    page = shown(nothing_filled_in, "label")
    [box] = page.named("input")
    ids = {attributes["id"] for tag, attributes in page.found if tag in ("p", "ul")}
    assert set(box["aria-describedby"].split()) == ids == {"id_label_helptext", "id_label_error"}
    assert box["aria-invalid"] == "true"


def test_a_view_may_give_a_hint_that_says_more_than_the_form() -> None:
    html = render_to_string("components/field.html", {"field": Sowing()["label"], "hint": "As on the tag."})
    assert "As on the tag." in html
    assert "Letter for letter." not in html


@pytest.mark.parametrize(("name", "kind"), [("came", "radio"), ("seen", "checkbox")])
def test_a_few_answers_become_chips_in_one_named_group(name: str, kind: str) -> None:
    page = shown(Sowing(), name)
    assert len(page.named("fieldset")) == len(page.named("legend")) == 1
    assert [box["type"] for box in page.named("input")] == [kind, kind]
    assert [label["for"] for label in page.named("label")] == [box["id"] for box in page.named("input")]


def test_a_group_is_described_by_its_hint_and_error(nothing_filled_in: Sowing) -> None:
    [group] = shown(nothing_filled_in, "came").named("fieldset")
    assert group["aria-describedby"] == "id_came_helptext id_came_error"


def test_one_tick_has_its_words_beside_it() -> None:
    page = shown(Sowing(), "empty")
    assert page.named("label")[0] == {"class": "tick", "for": "id_empty"}


def test_a_hidden_field_shows_nothing() -> None:
    page = shown(Sowing(), "token")
    assert [tag for tag, _ in page.found] == ["input"]


def test_the_summary_links_to_every_wrong_field(nothing_filled_in: Sowing) -> None:
    summary = Elements(render_to_string("components/error_summary.html", {"form": nothing_filled_in}))
    assert [link["href"] for link in summary.named("a")] == [
        "#id_label",
        "#id_came_0",
        "#id_empty",
        "#id_seen_0",
    ]


def test_what_is_wrong_with_a_hidden_field_is_said_without_a_link() -> None:
    form = Sowing({"label": "x", "came": "piece", "empty": "on", "seen": ["piece"]})
    html = render_to_string("components/error_summary.html", {"form": form})
    assert Elements(html).named("a") == []
    assert "Please fill this in." in html


def test_every_link_of_the_summary_leads_somewhere(nothing_filled_in: Sowing) -> None:
    summary = Elements(render_to_string("components/error_summary.html", {"form": nothing_filled_in}))
    fields = [shown(nothing_filled_in, name) for name in nothing_filled_in.fields]
    ids = {attributes.get("id") for page in fields for _, attributes in page.found}
    assert {link["href"].removeprefix("#") for link in summary.named("a")} <= ids


def test_a_form_without_errors_has_no_summary() -> None:
    assert render_to_string("components/error_summary.html", {"form": Sowing()}).strip() == ""
