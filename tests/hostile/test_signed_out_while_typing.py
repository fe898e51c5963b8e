"""Whoever was signed out while typing gets all of it back, and sends it again after signing in."""

from __future__ import annotations

import html
import re
from types import SimpleNamespace

import pytest
from django.test import Client

from tests.hostile.bodies import FORMS, OF_EVERYBODY, ready_for_forms
from tests.hostile.conftest import signed_in
from tests.hostile.hostile_words import BROKEN_OUT, MARKED_UP, never_live
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
ALL = FORMS | OF_EVERYBODY
OURS = {"headers": {"sec-fetch-site": "same-origin"}}


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


def given_back(page: str) -> tuple[str, dict[str, list[str]]]:
    """The address of the form that sends it again, and its fields."""
    form = next(part for part in page.split("<form") if "Send it again" in part)
    address = html.unescape(form.split('action="')[1].split('"')[0])
    fields: dict[str, list[str]] = {}
    for name, value in re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', form):
        fields.setdefault(name, []).append(html.unescape(value))
    return address, fields


def as_text(body: dict[str, object]) -> dict[str, list[str]]:
    """What a browser sends of a form, files left out."""
    listed = {
        key: value if isinstance(value, list) else [value] for key, value in body.items() if key != "file"
    }
    return {key: [str(each) for each in values] for key, values in listed.items()}


@pytest.mark.parametrize("name", sorted(ALL))
def test_everything_comes_back_and_is_taken_when_sent_again(name: str, ready: SimpleNamespace) -> None:
    form = ALL[name]
    url, body = form.url(ready), form.body(ready)
    before = records()
    reply = Client().post(url, body, **OURS)
    assert reply.status_code == 401
    assert not changed(before)
    address, again = given_back(reply.content.decode())
    again.pop("csrfmiddlewaretoken")
    assert again == as_text(body)
    assert address == url
    if "file" in body:
        assert "photo" in reply.content.decode()
        return  # no browser gives a file back; the page says so
    sent = ready.clients[form.may].post(address, again)
    assert sent.status_code == 302
    assert changed(before)


def test_what_comes_back_runs_nothing(ready: SimpleNamespace) -> None:
    words = MARKED_UP + BROKEN_OUT
    page = Client().post("/log/?x=" + words, {"plants-0-notes": words, words: words}, **OURS).content.decode()
    assert never_live(page)
    assert "&lt;script&gt;" in page


def test_the_way_back_leads_nowhere_else(ready: SimpleNamespace) -> None:
    for address in ("//elsewhere.example/log/", "/log/?next=//elsewhere.example"):
        page = Client().post(address, {"notes": "x"}, **OURS).content.decode()
        assert 'action="//' not in page
        assert 'action="http' not in page


@pytest.mark.parametrize(
    "elsewhere",
    [
        "//elsewhere.example", "https://elsewhere.example", "http:elsewhere.example", "/\\elsewhere.example",
        "javascript:alert(1)", "\\\\elsewhere.example", "/\t/elsewhere.example", " https://elsewhere.example",
        "https:///elsewhere.example", "//testserver@elsewhere.example", "\x00//elsewhere.example",
    ],
)  # fmt: skip
def test_signing_in_leads_nowhere_else(elsewhere: str, ready: SimpleNamespace) -> None:
    from tests.cast import PASSWORD

    body = {"username": "Owner", "password": PASSWORD, "next": elsewhere}
    reply = Client().post("/sign-in/", body)
    assert reply.status_code == 302
    assert reply["Location"] == "/"
    assert Client().post("/sign-in/", body | {"password": "wrong"}).status_code == 422
    client = signed_in(ready.people["spores"])
    assert client.get("/sign-in/", {"next": elsewhere})["Location"] == "/"
    assert client.post("/sign-out/", {"next": elsewhere})["Location"] == "/sign-in/"


@pytest.mark.parametrize("field", ["username", "password"])
@pytest.mark.parametrize(
    "words",
    ["x" * 100_000, "a\0b", MARKED_UP, "%", "ﷺ" * 200],
    ids=["long", "nul", "markup", "percent", "spreading"],
)
def test_nonsense_at_the_door_is_only_not_known(field: str, words: str, ready: SimpleNamespace) -> None:
    reply = Client().post("/sign-in/", {"username": "Owner", "password": "wrong"} | {field: words})
    assert reply.status_code == 422
    assert never_live(reply.content.decode())


@pytest.mark.parametrize(
    "words",
    ["x" * 100_000 + "@example.org", "a\0b@example.org", MARKED_UP, "owner@example.org\nBcc: x@example.org"],
    ids=["long", "nul", "markup", "header"],
)
def test_nonsense_where_a_password_is_forgotten_sends_nothing(
    words: str, ready: SimpleNamespace, mailoutbox
) -> None:
    reply = Client().post("/password/forgotten/", {"email": words})
    assert reply.status_code in (200, 302, 422)
    assert never_live(reply.content.decode())
    assert not [letter for letter in mailoutbox if len(letter.recipients()) > 1]
