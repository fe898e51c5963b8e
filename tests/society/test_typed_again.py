"""Nobody loses what they typed because a sign-in ended meanwhile."""

import html
import re

import pytest
from django.test import Client

from frondkeep.society.models import Submission
from tests.cast import make_member
from tests.desk.logging.typing import confirmed, filled, logged_plants

pytestmark = pytest.mark.django_db
OURS = {"headers": {"sec-fetch-site": "same-origin"}}


def hidden_fields(page: str) -> dict[str, str]:
    """The fields of the form that sends it again, and its address."""
    form = next(part for part in page.split("<form") if "Send it again" in part)
    found = re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)"', form)
    return {name: html.unescape(value) for name, value in found}


def test_a_form_sent_after_the_sign_in_ended_comes_back_with_all_in_it() -> None:
    form = confirmed(filled({"label_text": 'a "tag" <b>', "notes": "Two\nlines."}))
    response = Client().post("/log/", form, **OURS)
    page = response.content.decode()
    assert response.status_code == 401
    assert "You have been signed out" in page
    assert 'action="/log/"' in page
    again = hidden_fields(page)
    assert again.pop("csrfmiddlewaretoken")
    assert again == {name: str(value) for name, value in form.items()}


def test_sent_again_after_signing_in_the_plants_are_logged() -> None:
    client, ada = Client(), make_member()
    form = confirmed(filled({}))
    again = hidden_fields(client.post("/log/", form, **OURS).content.decode())
    client.force_login(ada.user)
    assert client.post("/log/", again).status_code == 302
    assert len(logged_plants(form)) == 1


def test_a_page_too_old_gives_everything_back_with_a_good_token() -> None:
    client = Client(enforce_csrf_checks=True)
    client.force_login(make_member().user)
    form = confirmed(filled({}))
    stale = client.post("/log/", form, **OURS)
    assert stale.status_code == 403
    assert "Please send it once more" in stale.content.decode()
    assert client.post("/log/", hidden_fields(stale.content.decode()), **OURS).status_code == 302
    assert len(logged_plants(form)) == 1


@pytest.mark.parametrize(
    "headers", [{"sec-fetch-site": "cross-site"}, {"origin": "http://elsewhere.example"}, {}]
)
def test_a_strange_page_is_offered_no_button_that_sends_its_form(headers: dict[str, str]) -> None:
    client = Client(enforce_csrf_checks=True)
    client.force_login(make_member().user)
    response = client.post("/log/", confirmed(filled({"label_text": "planted words"})), headers=headers)
    assert response.status_code == 403
    assert "Send it again" not in response.content.decode()
    assert "planted words" not in response.content.decode()
    assert not Submission.objects.exists()


def test_a_password_is_never_written_into_a_page() -> None:
    response = Client(enforce_csrf_checks=True).post(
        "/sign-in/", {"username": "ada", "password": "fronds in the mist"}, **OURS
    )
    assert response.status_code == 403
    assert "fronds in the mist" not in response.content.decode()


def test_a_stranger_who_only_looks_is_sent_to_sign_in() -> None:
    response = Client().get("/log/")
    assert response.status_code == 302
    assert response.url == "/sign-in/?next=/log/"


def test_what_was_typed_can_be_read_and_copied() -> None:
    response = Client().post("/log/", filled({"label_text": "silverd tassle"}), **OURS)
    page = response.content.decode()
    assert "<dt>plant 1: label text</dt><dd>silverd tassle</dd>" in page
    assert "<dt>submission" not in page
