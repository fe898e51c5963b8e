"""The frame of every page keeps to the content policy and works before a script has run."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser
from pathlib import Path
from types import SimpleNamespace

import pytest
from django.template.loader import render_to_string
from django.test import RequestFactory

TEMPLATES = Path(__file__).resolve().parents[2] / "templates"
NAV = [("Log plants", "/log/", True), ("Mine", "/mine/", False), ("Shows", "/shows/", False)]
VOID = {"meta", "link", "input", "br", "hr", "img"}


class Elements(HTMLParser):
    """Every start tag with its attributes, and the text of every script."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.found: list[tuple[str, dict[str, str]]] = []
        self.open: list[str] = []
        self.script_text = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, {name: value or "" for name, value in attrs}))
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in self.open:
            while self.open.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        if self.open and self.open[-1] == "script":
            self.script_text += data.strip()

    def named(self, tag: str) -> list[dict[str, str]]:
        return [attributes for name, attributes in self.found if name == tag]


@pytest.fixture
def framed() -> str:
    request = RequestFactory().get("/")
    request.user = SimpleNamespace(is_authenticated=True)
    return render_to_string(
        "base.html", {"nav": NAV, "signed_in_as": "Curator: I. Marsh", "request": request}
    )


def test_no_script_or_style_stands_in_the_page_itself(framed: str) -> None:
    page = Elements(framed)
    assert all(script.get("src", "").startswith("/static/") for script in page.named("script"))
    assert page.script_text == ""
    assert page.named("style") == []
    assert not any("style" in attributes for _, attributes in page.found)


def test_htmx_runs_nothing_that_comes_as_text_and_does_not_wait_for_ever(framed: str) -> None:
    meta = next(meta for meta in Elements(framed).named("meta") if meta.get("name") == "htmx-config")
    config = json.loads(meta["content"])
    forbidden = ("allowEval", "allowScriptTags", "includeIndicatorStyles", "historyRestoreAsHxRequest")
    assert {config[name] for name in forbidden} == {False}
    assert config["historyCacheSize"] == 0
    assert 0 < config["timeout"] <= 10_000


@pytest.mark.parametrize(
    ("status", "swaps"), [(200, True), (204, False), (409, True), (422, True), (403, False), (500, False)]
)
def test_answers_that_give_back_what_was_typed_are_shown(framed: str, status: int, swaps: bool) -> None:
    meta = next(meta for meta in Elements(framed).named("meta") if meta.get("name") == "htmx-config")
    handling = json.loads(meta["content"])["responseHandling"]
    first = next(rule for rule in handling if re.search(rule["code"], str(status)))
    assert first["swap"] is swaps


def test_the_live_regions_are_in_the_first_page(framed: str) -> None:
    regions = {
        a.get("id"): a["role"] for _, a in Elements(framed).found if a.get("role") in ("alert", "status")
    }
    assert regions == {"send-trouble": "alert", "messages": "status"}
    assert 'id="messages" role="status"></div>' in framed


def test_the_page_can_be_reached_past_the_head_and_says_where_we_are(framed: str) -> None:
    page = Elements(framed)
    assert page.named("a")[0]["href"] == "#main"
    assert page.named("main")[0]["id"] == "main"
    assert {a["href"] for a in page.named("a") if a.get("aria-current") == "page"} == {"/log/"}


def test_signing_out_is_sent_not_followed(framed: str) -> None:
    forms = [form for form in Elements(framed).named("form") if form.get("class") == "site-who"]
    assert forms
    assert {form["method"] for form in forms} == {"post"}
    assert not any("sign-out" in link.get("href", "") for link in Elements(framed).named("a"))


def test_a_stranger_is_offered_no_pages_and_no_way_out() -> None:
    page = Elements(render_to_string("base.html", {"nav": []}))
    assert page.named("nav") == []
    assert page.named("form") == []


def test_messages_are_drawn_by_their_kind() -> None:
    said = [SimpleNamespace(tags=tags) for tags in ("success", "info", "warning")]
    shown = Elements(render_to_string("components/messages.html", {"messages": said}))
    kinds = [item["class"].split() for item in shown.named("li")]
    assert kinds == [["notice", "notice-done"], ["notice", "notice-calm"], ["notice"]]


@pytest.mark.parametrize("name", ["400.html", "403.html", "403_csrf.html", "404.html", "500.html"])
def test_error_pages_need_nothing_but_themselves_and_blame_nobody(name: str) -> None:
    html = render_to_string(name)
    assert Elements(html).named("h1") == [{}]
    assert not re.search(r"invalid|illegal|forbidden|you must|error", html.split("<main")[1], re.I)


def test_a_form_that_was_open_too_long_gives_back_what_was_typed() -> None:
    html = render_to_string("403_csrf.html", {"typed": [("What the tag says", "silverd <tassle>")]})
    assert "silverd &lt;tassle&gt;" in html


@pytest.mark.parametrize(
    "path", sorted(TEMPLATES.rglob("*.html")), ids=lambda path: str(path.relative_to(TEMPLATES))
)
def test_no_template_brings_its_own_script_or_style(path: Path) -> None:
    text = path.read_text()
    assert not re.search(r"<style|\sstyle\s*=|\son[a-z]+\s*=(?!=)|hx-on|javascript:|hx-vals=.js:", text)
    assert all("src=" in tag for tag in re.findall(r"<script[^>]*>", text))
