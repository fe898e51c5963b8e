"""The curator's pages: what waits, two names side by side, deciding, undoing."""

from __future__ import annotations

import pytest
from django.db import connection, transaction
from django.test import Client
from django.test.utils import CaptureQueriesContext

from frondkeep.society.models import Member
from lineage.models import Ruling, Suspicion
from lineage.services.rulings import give_ruling
from specimens.changes import announcing_once
from specimens.models import Name
from specimens.services.claims import claim_parentage
from specimens.services.sowings import Source
from tests.cast import make_cultivar, make_curator, make_member, make_plant, make_species, token
from tests.lineage.same.conftest import signed_in

pytestmark = pytest.mark.django_db
SAME_PAGES = ("/same/", "/same/{pk}/", "/same/{pk}/decide/?answer=different", "/same/decisions/")


@pytest.fixture
def tassel(db: None) -> Name:
    return make_cultivar("Silver Tassel", raiser="T. Okoro")


@pytest.fixture
def pair(tassel: Name) -> Suspicion:
    make_cultivar("Silver Tassle")
    return Suspicion.objects.with_names().get()


@pytest.fixture
def client(curator: Member) -> Client:
    return signed_in(curator)


def page(client: Client, url: str) -> str:
    response = client.get(url)
    assert response.status_code == 200, response.status_code
    return response.content.decode()


def decide_url(pair: Suspicion, answer: str, stands: Name | None = None) -> str:
    named = f"&stands={stands.pk}" if stands else ""
    return f"/same/{pair.pk}/decide/?answer={answer.replace(' ', '+')}{named}"


def answers(reason: str = "grown side by side", *, last_seen: int = 0) -> dict[str, object]:
    return {"submission": token(), "last_seen": last_seen, "reason": reason}


@pytest.mark.parametrize("url", SAME_PAGES)
def test_a_member_finds_nothing_there(pair, ada, url):
    assert signed_in(ada).get(url.format(pk=pair.pk)).status_code == 404


def test_the_queue_says_how_likely_a_pair_is_and_why(pair, client):
    html = page(client, "/same/")
    assert "1 pair of names waits for your decision" in html
    assert "written nearly the same" in html
    assert f"about {pair.in_a_hundred} in 100 likely" in html


def test_the_queue_is_narrowed_to_a_genus_and_keeps_to_it(pair, client):
    make_cultivar("Bronze Duchess", "Asplenium")
    make_cultivar("Bronze Duchesse", "Asplenium")
    genus = Name.objects.get(epithet="Asplenium")
    html = page(client, f"/same/?genus={genus.pk}")
    assert "Bronze Duchesse" in html
    assert "Silver Tassle" not in html
    other = Suspicion.objects.get(first_name__genus=genus)
    assert f"/same/{other.pk}/?genus={genus.pk}" in html
    reply = client.post(f"{decide_url(other, 'different')}&genus={genus.pk}", answers())
    assert reply.url == f"/same/?genus={genus.pk}"


def test_an_empty_queue_says_so(client):
    assert "Nothing waits" in page(client, "/same/")


def test_two_names_stand_side_by_side_with_what_is_on_record(pair, tassel, ada, client):
    hillii = make_species("hillii")
    parents = (Source(name=hillii), Source(name=make_species("veitchii")))
    claim_parentage(tassel, says="cross", parents=parents, ground="record")
    make_plant(ada, tassel, label_text="S. Tassel")
    html = page(client, f"/same/{pair.pk}/")
    for words in ("Are these one plant?", "T. Okoro", "Ada Quill (1 plant)", "S. Tassel", "nobody"):
        assert words in html
    assert '<i lang="la">P. hillii</i> × <i lang="la">P. veitchii</i>' in html
    assert "1 of 1 waiting" in html
    assert "differ by a slip of the pen" in html
    assert "No DNA test is recorded." in html
    assert f"?answer=same&amp;stands={tassel.pk}" in html


def test_before_saving_the_page_says_what_would_change_and_changes_nothing(pair, tassel, ada, client):
    make_plant(ada, pair.second_name)
    html = page(client, decide_url(pair, "same", tassel))
    assert "will be shown as" in html
    assert "1 growing plant, whose labels would be printed anew" in html
    assert "The lineage of one plant rests on this." in html
    assert Ruling.objects.count() == 0


def test_a_decision_is_saved_with_its_reason_and_leads_to_the_next_pair(pair, tassel, curator, client):
    make_cultivar("Bronze Duchess")
    make_cultivar("Bronze Duchesse")
    following = Suspicion.objects.waiting().exclude(pk=pair.pk).get()
    reply = client.post(decide_url(pair, "same", tassel), answers(), follow=True)
    assert reply.redirect_chain == [(f"/same/{following.pk}/", 302)]
    ruling = Ruling.objects.get()
    assert (ruling.answer, ruling.stands, ruling.reason, ruling.by) == (
        "same",
        tassel,
        "grown side by side",
        curator.user,
    )
    assert f'<a href="/same/decisions/{ruling.pk}/undo/">Undo it</a>' in reply.content.decode()
    assert Name.objects.get(pk=pair.second_name_id).accepted == tassel


@pytest.mark.parametrize("answer", ["different", "evidence", "not known"])
def test_every_answer_can_be_given(pair, client, answer):
    client.post(decide_url(pair, answer), answers())
    assert Ruling.objects.get().answer == answer
    assert "Nothing waits" in page(client, "/same/")


def test_a_decision_without_a_reason_is_not_saved_and_says_so(pair, client):
    reply = client.post(decide_url(pair, "different"), answers(""))
    assert reply.status_code == 422
    assert "Write why, in a few words." in reply.content.decode()
    assert Ruling.objects.count() == 0


def test_a_form_sent_twice_is_one_decision(pair, client):
    typed = answers()
    for _ in range(2):
        assert client.post(decide_url(pair, "different"), typed).status_code == 302
    assert Ruling.objects.count() == 1


def test_the_second_curator_is_told_and_keeps_what_they_typed(pair, tassel, client):
    other = make_curator("Hollis Penn")
    names = {"first": pair.first_name, "second": pair.second_name}
    give_ruling(**names, answer="different", reason="other spores", by=other.user)
    typed = answers("my own reason")
    reply = client.post(decide_url(pair, "same", tassel), typed)
    html = reply.content.decode()
    assert reply.status_code == 409
    for words in ("Decided while you were looking", "Hollis Penn", "other spores", "my own reason"):
        assert words in html
    # Told of it, they may decide otherwise.
    again = typed | {"last_seen": Ruling.objects.get().pk}
    assert client.post(decide_url(pair, "same", tassel), again).status_code == 302
    assert Name.objects.get(pk=pair.second_name_id).accepted == tassel


def test_what_contradicts_is_told_before_saving_and_refused_with_the_reason_kept(
    pair, tassel, curator, client
):
    third = make_cultivar("Sliver Tassel")
    second = pair.second_name
    for first, other in ((tassel, second), (second, third)):
        give_ruling(first=first, second=other, answer="same", stands=tassel, reason="seen", by=curator.user)
    outer = Suspicion.objects.get(first_name=tassel, second_name=third)
    told = "This cannot stand beside what was decided before"
    assert told in page(client, decide_url(outer, "different"))
    reply = client.post(decide_url(outer, "different"), answers("I looked again"))
    assert reply.status_code == 422
    assert told in reply.content.decode()
    assert "I looked again" in reply.content.decode()
    assert Ruling.objects.count() == 2


def test_only_what_the_page_offers_can_be_decided(pair, client):
    stranger = make_cultivar("Bronze Duchess")
    assert client.get(decide_url(pair, "same", stranger)).status_code == 404
    assert client.get(decide_url(pair, "same")).status_code == 404
    assert client.get(decide_url(pair, "undone")).status_code == 404
    assert client.get(f"/same/{pair.pk}/decide/").url == f"/same/{pair.pk}/"


def test_a_decision_is_undone_with_a_reason_at_any_time(pair, tassel, client):
    client.post(decide_url(pair, "same", tassel), answers())
    ruling = Ruling.objects.get()
    url = f"/same/decisions/{ruling.pk}/undo/"
    assert "will be shown as" in page(client, url)
    assert client.post(url, {"submission": token(), "reason": ""}).status_code == 422
    assert Ruling.objects.count() == 1
    reply = client.post(url, {"submission": token(), "reason": "another pot"}, follow=True)
    html = reply.content.decode()
    for words in ("The decision is undone", "no longer stands", "another pot", "grown side by side"):
        assert words in html
    assert Name.objects.get(pk=pair.second_name_id).accepted_id == pair.second_name_id
    assert "does not stand any more" in page(client, url)


def test_the_page_of_a_decided_pair_says_what_was_decided_and_why(pair, tassel, client):
    client.post(decide_url(pair, "same", tassel), answers("one clump, two tags"))
    html = page(client, f"/same/{pair.pk}/")
    assert "Decided: the same plant" in html
    assert "one clump, two tags" in html
    assert f"stands={pair.second_name_id}" in html


def test_decisions_are_narrowed_to_one_answer(pair, client):
    client.post(decide_url(pair, "evidence"), answers("bring both in spring"))
    assert "bring both in spring" in page(client, "/same/decisions/?answer=evidence")
    assert "No decisions yet" in page(client, "/same/decisions/?answer=same")


def many_pairs(curator: Member, count: int) -> None:
    with transaction.atomic(), announcing_once():
        for number in range(count):
            word = "".join(chr(97 + int(digit)) * 2 for digit in f"{number:03}")
            one, other = make_cultivar(f"Kestrel {word}"), make_cultivar(f"Kestral {word}")
            make_plant(curator, one)
            make_plant(make_member(f"Member {number}", user=False), other)


BUDGETS = {"/same/": 9, "/same/{pk}/": 21, "/same/{pk}/decide/?answer=different": 9}


def test_pages_take_as_many_queries_for_forty_pairs_as_for_one(curator, client):
    many_pairs(curator, 1)
    first = Suspicion.objects.waiting().first()
    few = {url: queries_of(client, url.format(pk=first.pk)) for url in BUDGETS}
    assert {url: count for url, count in few.items() if count > BUDGETS[url]} == {}
    many_pairs(curator, 40)
    assert Suspicion.objects.waiting().count() >= 40
    assert {url: queries_of(client, url.format(pk=first.pk)) for url in BUDGETS} == few


def queries_of(client: Client, url: str) -> int:
    with CaptureQueriesContext(connection) as asked:
        page(client, url)
    return len(asked)


def test_the_decisions_take_as_many_queries_for_forty_as_for_one(
    curator, client, django_assert_num_queries, django_assert_max_num_queries
):
    names = [make_cultivar(f"Kestrel {letter}{letter}") for letter in "abcdefghij"]
    one, *others = names
    give_ruling(first=one, second=others[0], answer="different", reason="seen", by=curator.user)
    with django_assert_max_num_queries(8) as few:
        page(client, "/same/decisions/")
    for other in others[1:]:
        give_ruling(first=one, second=other, answer="different", reason="seen", by=curator.user)
    with django_assert_num_queries(len(few)):
        page(client, "/same/decisions/")
