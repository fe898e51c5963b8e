"""Whatever is typed into any field of any form is taken as it is, or answered at its field with all of it kept."""

from __future__ import annotations

import html
from types import SimpleNamespace
from urllib.parse import urlencode

import pytest
from django.db import transaction
from django.http import HttpResponse

from tests.hostile.bodies import FORMS, OF_EVERYBODY, ready_for_forms
from tests.hostile.hostile_words import EVERYWHERE, MARKED_UP, QUOTES, never_live
from tests.hostile.records import changed, records, too_long

pytestmark = pytest.mark.django_db
TYPED: dict[str, tuple[str, ...]] = {
    "took a pup": ("label_text", "taken", "other_keeper"),
    "identify": ("name_text", "on", "remarks"),
    "gave away": ("receiver_text", "label_text", "on"),
    "photo": ("caption",),
    "ended": ("on", "reason"),
    "edit": (
        "label_text", "acquired", "from_words", "mount", "own_number", "now_with", "last_seen_alive", "notes",
        "growing_place",
    ),
    "origin": ("parent_code", "parent_words"),
    "edit a name": ("epithet", "raiser", "introduced", "origin", "notes"),
    "decide": ("reason",),
    "undo": ("reason",),
    "add a show": ("name", "venue", "date", "entries_close_at", "months_of_possession"),
    "add a class": ("title", "section", "number"),
    "enter for anyone": ("exhibitor", "plants", "title", "note"),
    "log": tuple(
        f"plants-0-{field}"
        for field in ("label_text", "think", "from_text", "parent_text", "spores_of", "own_number", "notes")
    ),
    "enter": ("note",),
}  # fmt: skip
ALONE = {
    word: EVERYWHERE[word]
    for word in ("501 characters", "only quotes", "only marks", "markup", "signs that spread", "a long word")
}
ALL = FORMS | OF_EVERYBODY


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


def send(form: str, ready: SimpleNamespace, typed: dict[str, str]) -> HttpResponse:
    """The form's answer; what it wrote is undone unless it was refused."""
    client = ready.clients[ALL[form].may]
    client.raise_request_exception = False
    reply = client.post(ALL[form].url(ready), ALL[form].body(ready) | typed)
    assert reply.status_code in (200, 302, 422), (form, reply.status_code, typed)
    if reply.status_code == 200:
        assert form == "log", form
    return reply


def check(form: str, ready: SimpleNamespace, typed: dict[str, str]) -> None:
    with transaction.atomic():
        reply = send(form, ready, typed)
        page = reply.content.decode()
        assert never_live(page)
        if reply.status_code == 422:
            assert_told_and_kept(form, page, typed)
        else:
            assert not too_long(), (form, typed)
            transaction.set_rollback(True)


def assert_told_and_kept(form: str, page: str, typed: dict[str, str]) -> None:
    assert "field-error" in page or 'role="alert"' in page, form
    for field, value in typed.items():
        if min(map(ord, value)) < 32:
            continue  # a page cannot hold these
        assert field in page, (form, field)
        assert value[:400] in html.unescape(page), (form, field, value[:60])


@pytest.mark.parametrize("form", sorted(TYPED))
def test_the_same_words_in_every_field_at_once(form: str, ready: SimpleNamespace) -> None:
    before = records()
    for words in EVERYWHERE.values():
        check(form, ready, dict.fromkeys(TYPED[form], words))
    assert not changed(before)


@pytest.mark.parametrize("form", sorted(TYPED))
def test_the_same_words_in_one_field_alone(form: str, ready: SimpleNamespace) -> None:
    before = records()
    for field in TYPED[form]:
        for words in ALONE.values():
            check(form, ready, {field: words})
    assert not changed(before)


@pytest.mark.parametrize("form", sorted(set(TYPED) - {"photo"}))
def test_bytes_that_are_no_letters(form: str, ready: SimpleNamespace) -> None:
    """Half of a pair of surrogates, as UTF-8 and in the old way of writing addresses."""
    body = urlencode(ALL[form].body(ready), doseq=True)
    for nonsense in ("%ED%A0%80", "%FF%FE", "%u0000"):
        typed = "&".join(f"{field}={nonsense}" for field in TYPED[form])
        client = ready.clients[ALL[form].may]
        with transaction.atomic():
            reply = client.post(
                ALL[form].url(ready), f"{body}&{typed}", content_type="application/x-www-form-urlencoded"
            )
            assert reply.status_code in (200, 302, 422), nonsense
            transaction.set_rollback(True)


@pytest.mark.parametrize("words", [QUOTES, "\u202e\u200f", MARKED_UP])
def test_a_name_without_a_letter_is_asked_for_again(words: str, ready: SimpleNamespace) -> None:
    before = records()
    reply = send("identify", ready, {"name_text": words})
    if words == MARKED_UP:
        assert reply.status_code == 302
    else:
        assert reply.status_code == 422
        assert 'id="id_name_text_error"' in reply.content.decode()
        assert not changed(before)
