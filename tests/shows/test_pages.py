"""The pages of a show: entering, the list, and who may read whose entry it is."""

import shutil
import subprocess

import pytest
from django.test import Client

from frondkeep.shows.models import Entry
from frondkeep.shows.services.entries import close_judging, number_entries
from tests.cast import make_committee, make_cultivar, make_member, make_plant, make_species, token, when
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show

pytestmark = pytest.mark.django_db
KEPT = {"acquired": when("2015", LONG_AGO)}


def signed_in(member) -> Client:
    client = Client()
    client.force_login(member.user)
    return client


def pdf_text(data: bytes) -> str:
    if not shutil.which("pdftotext"):
        pytest.skip("pdftotext is missing")
    return subprocess.run(
        ["pdftotext", "-layout", "-", "-"], input=data, capture_output=True, check=True
    ).stdout.decode()


def test_a_member_enters_in_one_form() -> None:
    ada, show = make_member(), make_show()
    make_class(show)
    plant = make_plant(ada, make_cultivar(), **KEPT)
    page = signed_in(ada).post(
        f"/shows/{show.pk}/classes/1/enter/", {"submission": token(), "plants": [plant.code]}, follow=True
    )
    assert "Entered in class 1" in page.content.decode()
    assert Entry.objects.get().plants.get().specimen == plant


def test_the_same_form_five_times_enters_once() -> None:
    ada, show, form = make_member(), make_show(most_in_class=5), token()
    make_class(show)
    plant = make_plant(ada, make_cultivar(), **KEPT)
    client = signed_in(ada)
    for _ in range(5):
        client.post(f"/shows/{show.pk}/classes/1/enter/", {"submission": form, "plants": [plant.code]})
    assert Entry.objects.count() == 1


def test_plants_that_do_not_fit_are_listed_with_the_reason() -> None:
    ada, show = make_member(), make_show()
    make_class(show, wants="species")
    make_plant(ada, make_cultivar(), **KEPT)
    page = signed_in(ada).get(f"/shows/{show.pk}/classes/1/enter/").content.decode()
    assert "None of your plants fits this class" in page
    assert "This class wants a species" in page


def test_the_committee_enters_for_a_member_and_for_a_guest() -> None:
    ada, show = make_member(), make_show(most_in_class=5)
    make_class(show)
    plant = make_plant(ada, make_cultivar(), **KEPT)
    committee, url = signed_in(make_committee()), f"/shows/{show.pk}/classes/1/enter-for/"
    committee.post(url, {"submission": token(), "exhibitor": "ada quill", "plants": plant.code})
    committee.post(
        url, {"submission": token(), "exhibitor": "Guest", "is_guest": "on", "plants": "Platycerium 'Any'"}
    )
    assert {entry.exhibitor.name for entry in Entry.objects.all()} == {"Ada Quill", "Guest"}


def test_a_slip_in_a_code_is_answered_and_the_form_keeps_what_was_typed() -> None:
    ada, show = make_member(), make_show()
    make_class(show)
    plant = make_plant(ada, make_cultivar(), **KEPT)
    wrong = plant.code[:-1] + ("A" if plant.code[-1] != "A" else "B")
    page = signed_in(make_committee()).post(
        f"/shows/{show.pk}/classes/1/enter-for/",
        {"submission": token(), "exhibitor": "Ada Quill", "plants": wrong, "note": "on a high table"},
    )
    assert page.status_code == 422
    assert "has a slip. Did you mean" in page.content.decode()
    assert plant.code in page.content.decode()
    assert "on a high table" in page.content.decode()


@pytest.fixture
def judged() -> dict[str, object]:
    ada, show = make_member(), make_show()
    plant = make_plant(ada, make_cultivar("Silver Tassel"), **KEPT)
    make_entry(make_class(show), ada, plant)
    number_entries(show)
    return {"ada": ada, "show": show, "plant": plant}


def test_before_judging_nobody_but_the_committee_reads_whose_entry_it_is(judged) -> None:
    show, stranger = judged["show"], signed_in(make_member("Jonas"))
    for path in ("entries/", "entries.pdf", "judges.pdf"):
        assert stranger.get(f"/shows/{show.pk}/{path}").status_code == 404
    assert "Ada Quill" not in stranger.get(f"/shows/{show.pk}/").content.decode()
    assert "Ada Quill" in signed_in(make_committee()).get(f"/shows/{show.pk}/entries/").content.decode()


def test_after_judging_everybody_reads_it(judged) -> None:
    close_judging(judged["show"])
    assert (
        "Ada Quill"
        in signed_in(make_member("Jonas")).get(f"/shows/{judged['show'].pk}/entries/").content.decode()
    )


def test_the_entry_list_prints_with_exhibitors_and_the_judges_copy_without(judged) -> None:
    committee = signed_in(make_committee())
    listed = pdf_text(committee.get(f"/shows/{judged['show'].pk}/entries.pdf").content)
    judges = pdf_text(committee.get(f"/shows/{judged['show'].pk}/judges.pdf").content)
    assert "Platycerium ‘Silver Tassel’" in listed
    assert "Platycerium ‘Silver Tassel’" in judges
    assert "Ada Quill" in listed
    assert "Ada" not in judges
    assert judged["plant"].code not in judges


def test_only_its_exhibitor_and_the_committee_withdraw_an_entry(judged) -> None:
    url = f"/entries/{Entry.objects.get().pk}/withdraw/"
    assert signed_in(make_member("Jonas")).post(url).status_code == 404
    assert signed_in(judged["ada"]).get(url).status_code == 405
    signed_in(judged["ada"]).post(url)
    assert Entry.objects.get().withdrawn_at is not None


def test_the_list_takes_as_many_queries_for_many_entries_as_for_one(
    judged, django_assert_num_queries
) -> None:
    committee = signed_in(make_committee())
    url = f"/shows/{judged['show'].pk}/entries/"
    committee.get(url)
    # session, user, roles (twice for page and head: cached), member, show, entries, plants, their sowings' sources,
    # classes
    with django_assert_num_queries(8):
        committee.get(url)
    for place in range(20):
        who = make_member(f"Member {place}")
        make_entry(
            judged["show"].classes.get(), who, make_plant(who, make_species(f"species-{place}"), **KEPT)
        )
    with django_assert_num_queries(8):
        committee.get(url)
