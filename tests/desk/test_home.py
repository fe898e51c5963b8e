"""The first page, one's own plants, help, and the way round."""

import pytest
from django.test import Client

from frondkeep.desk.views.help import JOBS
from frondkeep.society.models import Member, Role
from specimens.models import SeenBy
from specimens.services.identifications import identify
from specimens.services.specimens import change_keeper, end_specimen
from tests.cast import make_committee, make_cultivar, make_household, make_member, make_plant, make_user
from tests.desk.conftest import signed_in
from tests.shows.make import make_class, make_entry, make_show

pytestmark = pytest.mark.django_db


def test_a_stranger_is_sent_to_the_sign_in() -> None:
    for address in (
        "/",
        "/plants/",
        "/plants.csv",
        "/mine/",
        "/names/",
        "/search/",
        "/suggest/keepers/",
        "/help/",
    ):
        assert Client().get(address).status_code == 302


def test_the_first_page_shows_shared_arrivals_and_counts_my_plants(ada: Member, jonas: Member) -> None:
    mine = make_plant(ada, make_cultivar())
    shared, hidden = make_plant(jonas), make_plant(jonas, seen_by=SeenBy.KEEPER)
    response = signed_in(ada).get("/")
    assert [row.plant for row in response.context["listed"]] == [shared, mine]
    assert hidden.code not in response.content.decode()
    assert response.context["waiting"][0].count == 1


def test_the_curator_finds_unchecked_names_and_other_views_waiting(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), by=curator.user, ground="looks")
    identify(plant, name=make_cultivar("Bronze Duchess", checked=False), by=ada.user, ground="looks")
    waiting = {each.words: each for each in signed_in(curator).get("/").context["waiting"]}
    assert waiting["name not yet checked"].count == 1
    assert waiting["other view of what a plant is"].count == 1
    html = signed_in(curator).get(waiting["other view of what a plant is"].url).content.decode()
    assert plant.code in html
    assert signed_in(ada).get("/proposals/").status_code == 404
    assert len(signed_in(ada).get("/").context["waiting"]) == 1


def test_my_plants_are_those_i_and_my_household_keep_now(ada: Member) -> None:
    bram, mei = make_member("Bram Lode"), make_member("Mei Lode")
    household = make_household("The Lodes", bram, mei)
    ours, his = make_plant(household), make_plant(bram)
    make_plant(ada)
    assert {row.plant for row in signed_in(bram).get("/mine/").context["listed"]} == {ours, his}
    assert {row.plant for row in signed_in(mei).get("/mine/").context["listed"]} == {ours}


def test_a_user_without_a_member_finds_empty_pages_not_errors() -> None:
    client = Client()
    client.force_login(make_user("Lone Admin", Role.ADMINISTRATOR))
    for address in ("/", "/mine/", "/plants/", "/names/", "/search/?q=x"):
        assert client.get(address).status_code == 200


def test_every_job_has_its_help(ada: Member, curator: Member) -> None:
    index = signed_in(curator).get("/help/").content.decode()
    for job in JOBS:
        assert job.title in index
        assert signed_in(ada).get(f"/help/{job.slug}/").status_code == 200
    assert signed_in(ada).get("/help/nothing/").status_code == 404


def test_the_way_round_marks_where_one_is(ada: Member) -> None:
    nav = signed_in(ada).get("/plants/").context["nav"]
    assert [label for label, _, current in nav if current] == ["The society’s plants"]
    assert "Perhaps the same plant" not in [label for label, _, _ in nav]


def test_who_is_signed_in_is_said_with_their_role(ada: Member, curator: Member) -> None:
    assert signed_in(curator).get("/").context["signed_in_as"] == "Curator: Imke Marsh"
    assert signed_in(ada).get("/").context["signed_in_as"] == "Ada Quill"


def test_what_died_or_left_stands_apart_from_what_i_keep(ada: Member, jonas: Member) -> None:
    kept, dead = make_plant(ada), make_plant(ada)
    end_specimen(dead, version=dead.version, state="dead")
    given = make_plant(ada)
    change_keeper(given, keeper=jonas.keeper)
    client = signed_in(ada)
    assert [row.plant for row in client.get("/mine/").context["listed"]] == [kept]
    assert [row.plant for row in client.get("/mine/?gone").context["listed"]] == [dead]


def test_each_role_finds_the_pages_that_no_list_leads_to() -> None:
    wanted = {
        Role.CURATOR: {"Import spreadsheets", "Decisions so far", "Members and how to reach them"},
        Role.SECRETARY: {"Members and how to reach them", "Meetings"},
        Role.ADMINISTRATOR: {"Users and their roles", "Import spreadsheets"},
        Role.COMMITTEE: set(),
    }
    for role, pages in wanted.items():
        client = signed_in(make_member(f"The {role}", role))
        duties = dict(client.get("/").context["duties"])
        assert pages <= set(duties)
        assert "Change my password" in duties
        assert {client.get(url).status_code for url in duties.values()} == {200}


def test_the_committee_finds_entries_without_a_number_waiting(ada: Member) -> None:
    show = make_show()
    make_entry(make_class(show), ada, make_plant(ada), overrule=True)
    committee, member = signed_in(make_committee()), signed_in(ada)
    waiting = {each.words: each for each in committee.get("/").context["waiting"]}
    assert waiting["entry without a number"].count == 1
    assert waiting["entry without a number"].url == f"/shows/{show.pk}/entries/"
    assert len(member.get("/").context["waiting"]) == 1
