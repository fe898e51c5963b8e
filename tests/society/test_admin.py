"""Admin pages of people: users with their roles, members with their keepers."""

import pytest
from django.core import mail
from django.test import Client
from django.urls import reverse

from frondkeep.society.models import Appearance, Keeper, Member, Role, User
from tests.cast import make_member

pytestmark = pytest.mark.django_db
NO_ROLES = {
    "roles_held-TOTAL_FORMS": "0",
    "roles_held-INITIAL_FORMS": "0",
    "roles_held-MIN_NUM_FORMS": "0",
    "roles_held-MAX_NUM_FORMS": "1000",
}
PASSWORD = "mosses under the bench"


def client_of(role: str) -> Client:
    client = Client()
    client.force_login(make_member(f"The {role}", role).user)
    return client


@pytest.fixture
def administrator() -> Client:
    return client_of(Role.ADMINISTRATOR)


def add_user(client: Client, **sent: str) -> User:
    values = {"name": "Nell Brack", "email": "nell@example.org", "is_active": "on", **NO_ROLES, **sent}
    reply = client.post(reverse("admin:society_user_add"), values)
    assert reply.status_code == 302, reply.context["errors"]
    return User.objects.get(name=values["name"])


def test_a_new_user_signs_in_with_the_password_typed(administrator: Client) -> None:
    add_user(administrator, new_password=PASSWORD)
    reply = Client().post("/sign-in/", {"username": "nell brack", "password": PASSWORD})
    assert reply.status_code == 302
    assert reply["Location"] == "/"


def test_a_new_user_without_a_password_cannot_sign_in_by_one(administrator: Client) -> None:
    assert not add_user(administrator).has_usable_password()


def test_a_new_user_without_a_password_gets_a_letter_to_choose_one(administrator: Client) -> None:
    add_user(administrator)
    Client().post("/password/forgotten/", {"email": "Nell@example.org"})
    assert [letter.to for letter in mail.outbox] == [["nell@example.org"]]
    assert "/password/new/" in mail.outbox[0].body


def test_a_poor_password_is_refused_with_reasons(administrator: Client) -> None:
    reply = administrator.post(
        reverse("admin:society_user_add"), {"name": "Nell Brack", "new_password": "password", **NO_ROLES}
    )
    assert "too common" in reply.content.decode()
    assert not User.objects.filter(name="Nell Brack").exists()


def test_roles_are_granted_with_the_user(administrator: Client) -> None:
    user = add_user(
        administrator, **{"roles_held-TOTAL_FORMS": "1", "roles_held-0-role": Role.COMMITTEE.value}
    )
    assert user.is_committee
    assert not user.is_curator


def test_a_user_changed_without_a_password_keeps_the_one_they_have(administrator: Client) -> None:
    user = add_user(administrator, new_password=PASSWORD)
    address = reverse("admin:society_user_change", args=[user.pk])
    values = {"name": "Nell Brack", "email": "new@example.org", "is_active": "on", **NO_ROLES}
    assert administrator.post(address, values).status_code == 302
    user.refresh_from_db()
    assert user.email == "new@example.org"
    assert user.check_password(PASSWORD)


def test_a_member_added_by_the_secretary_can_keep_plants() -> None:
    reply = client_of(Role.SECRETARY).post(
        reverse("admin:society_member_add"),
        {"name": "Nell Brack", "appears": Appearance.A_MEMBER.value, "joined": "spring 1998"},
    )
    assert reply.status_code == 302, reply.context["errors"]
    member = Member.objects.get(name="Nell Brack")
    assert Keeper.objects.filter(member=member).count() == 1
    assert (member.joined.words, member.joined.earliest.year) == ("spring 1998", 1998)


def test_what_is_missing_on_an_admin_page_is_asked_for_kindly() -> None:
    reply = client_of(Role.SECRETARY).post(reverse("admin:society_member_add"), {})
    assert "Please fill this in." in reply.content.decode()


def test_whoever_has_no_page_there_finds_no_records() -> None:
    assert client_of(Role.COMMITTEE).get("/admin/", follow=True).status_code == 404
    assert client_of(Role.SECRETARY).get("/admin/").status_code == 200
