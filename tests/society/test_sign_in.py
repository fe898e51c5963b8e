"""The door: who comes in, how guessing is slowed, what a stranger learns."""

import re

import pytest
from django.core import mail
from django.test import Client

from frondkeep.society.models import Role, Society
from tests.cast import PASSWORD, make_member, make_user

pytestmark = pytest.mark.django_db


def sign_in(name: str, password: str = PASSWORD, client: Client | None = None, **more: str):
    return (client or Client()).post("/sign-in/", {"username": name, "password": password, **more})


def without_tokens(page: str) -> str:
    """A page without what differs between any two sendings of it."""
    return re.sub(r'value="[^"]{40,}"|"X-CSRFToken": "[^"]+"', "", page)


@pytest.mark.parametrize(
    "typed", ["Ada Quill", "ada quill", " Ada Quill ", "ada@example.org", "ADA@EXAMPLE.ORG"]
)
def test_a_name_or_an_address_opens_the_door(typed: str) -> None:
    make_user("Ada Quill", email="ada@example.org")
    assert sign_in(typed).headers["Location"] == "/"


def test_a_couple_may_share_an_address_and_the_password_decides() -> None:
    make_user("Bram", email="both@example.org")
    mei = make_user("Mei", email="both@example.org")
    mei.set_password("another long phrase")
    mei.save()
    client = Client()
    sign_in("both@example.org", "another long phrase", client)
    assert client.session["_auth_user_id"] == str(mei.pk)


def test_a_wrong_password_is_answered_without_blame_and_the_name_is_kept() -> None:
    make_user("Ada Quill")
    answer = sign_in("Ada Quill", "wrong")
    assert answer.status_code == 422
    page = answer.content.decode()
    assert "We could not sign you in" in page
    assert 'value="Ada Quill"' in page
    assert "wrong" not in re.findall(r'value="([^"]*)"', page)


def test_nobody_learns_who_exists() -> None:
    make_user("Ada Quill")
    pages = [sign_in(name, "wrong").content.decode() for name in ("Ada Quill", "Nobody Here")]
    said = [without_tokens(re.sub(r"Ada Quill|Nobody Here", "", page)) for page in pages]
    assert said[0] == said[1]


def test_a_closed_sign_in_stays_out() -> None:
    make_user("Ada Quill", is_active=False)
    assert sign_in("Ada Quill").status_code == 422


def test_after_ten_wrong_guesses_the_page_says_how_long_and_whom_to_ask() -> None:
    Society.objects.create(pk=1, name="A society", whom_to_ask="Imke, on the telephone")
    make_user("Ada Quill")
    answers = [sign_in("Ada Quill", f"guess {number}") for number in range(10)]
    assert [answer.status_code for answer in answers] == [422] * 9 + [429]
    page = answers[-1].content.decode()
    assert "15 minutes" in page
    assert "Imke, on the telephone" in page
    assert answers[-1].headers["Retry-After"] == "900"
    assert sign_in("Ada Quill").status_code == 429


def test_guesses_from_one_place_do_not_lock_the_owner_out_elsewhere() -> None:
    make_user("Ada Quill")
    attacker = Client(REMOTE_ADDR="192.0.2.7")
    for number in range(11):
        sign_in("Ada Quill", f"guess {number}", attacker)
    assert sign_in("Ada Quill", client=Client(REMOTE_ADDR="192.0.2.8")).status_code == 302


def test_a_neighbour_behind_the_same_router_is_not_locked_out() -> None:
    make_user("Ada Quill")
    make_user("Jonas")
    for number in range(11):
        sign_in("Ada Quill", f"guess {number}")
    assert sign_in("Jonas").status_code == 302


def test_a_sign_in_leads_back_only_to_our_own_pages() -> None:
    make_user("Ada Quill")
    assert sign_in("Ada Quill", next="/plants/").headers["Location"] == "/plants/"
    assert sign_in("Ada Quill", next="https://elsewhere.example/").headers["Location"] == "/"


def test_a_member_may_stay_signed_in_on_their_own_device() -> None:
    make_user("Ada Quill")
    client = Client()
    sign_in("Ada Quill", client=client, stay="on")
    assert client.session.get_expiry_age() == 90 * 24 * 60 * 60
    other = Client()
    sign_in("Ada Quill", client=other)
    assert other.session.get_expire_at_browser_close()


def test_whoever_holds_a_role_signs_in_anew_after_twelve_hours() -> None:
    make_user("Imke Marsh", Role.CURATOR)
    client = Client()
    sign_in("Imke Marsh", client=client, stay="on")
    assert client.session.get_expiry_age() <= 12 * 60 * 60


def test_a_new_password_comes_by_letter_and_its_link_works_once() -> None:
    user = make_user("Ada Quill", email="ada@example.org")
    client = Client()
    client.post("/password/forgotten/", {"email": "ada@example.org"})
    (link,) = re.findall(r"http://testserver(/password/new/\S+)", mail.outbox[0].body)
    page = client.get(link, follow=True)
    path = page.redirect_chain[-1][0]
    client.post(path, {"new_password1": "seventeen green fronds", "new_password2": "seventeen green fronds"})
    user.refresh_from_db()
    assert user.check_password("seventeen green fronds")
    assert "used already" in Client().get(link, follow=True).content.decode()


def test_a_letter_for_an_unknown_address_is_promised_alike() -> None:
    make_user("Ada Quill", email="ada@example.org")
    answers = [
        without_tokens(Client().post("/password/forgotten/", {"email": email}, follow=True).content.decode())
        for email in ("ada@example.org", "nobody@example.org")
    ]
    assert answers[0] == answers[1]
    assert len(mail.outbox) == 1


def test_signing_out_needs_a_form() -> None:
    client = Client()
    client.force_login(make_member().user)
    assert client.get("/sign-out/").status_code == 405
    assert client.post("/sign-out/").status_code == 302
    assert "_auth_user_id" not in client.session


def test_the_admin_pages_have_no_door_of_their_own() -> None:
    assert Client().get("/admin/").headers["Location"].startswith("/admin/login/")
    assert Client().get("/admin/login/?next=/admin/").headers["Location"].startswith("/sign-in/")
    member = Client()
    member.force_login(make_member().user)
    assert member.get("/admin/", follow=True).status_code == 404
