"""Two people who change one record at one time: the second sees both versions and keeps what they typed."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from specimens.models import Name, Specimen
from tests.hostile.bodies import FORMS, ready_for_forms
from tests.hostile.hostile_words import MARKED_UP, never_live
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
EDITS: dict[str, tuple[str, dict[str, str], dict[str, str]]] = {
    # form: the second one's role; what the first types; what the second types.
    "edit": ("owner", {"notes": "theirs"}, {"notes": f"mine {MARKED_UP}", "label_text": "my words"}),
    "ended": ("owner", {"reason": "theirs"}, {"reason": "mine, frost", "on": "winter 2023"}),
    "origin": ("curator", {"parent_words": "theirs"}, {"parent_words": "mine, an old plant"}),
    "edit a name": ("curator", {"raiser": "Theirs"}, {"raiser": "Mine, T. Okoro", "notes": "my notes"}),
}


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


@pytest.mark.parametrize("name", sorted(EDITS))
def test_the_second_is_told_and_keeps_what_was_typed(name: str, ready: SimpleNamespace) -> None:
    role, theirs, mine = EDITS[name]
    form = FORMS[name]
    url, body = form.url(ready), form.body(ready)
    assert ready.clients["curator"].post(url, body | theirs).status_code == 302
    before = records()
    reply = ready.clients[role].post(url, body | mine)
    page = reply.content.decode()
    assert reply.status_code == 409
    assert "while you were typing" in page
    for words in mine.values():
        assert words.split(" <")[0] in page
    assert never_live(page)
    assert not changed(before)


@pytest.mark.parametrize("name", ["edit", "edit a name"])
def test_both_versions_stand_side_by_side(name: str, ready: SimpleNamespace) -> None:
    role, theirs, mine = EDITS[name]
    form = FORMS[name]
    url, body = form.url(ready), form.body(ready)
    ready.clients["curator"].post(url, body | theirs)
    page = ready.clients[role].post(url, body | mine).content.decode()
    for words in theirs.values():
        assert f"<td>{words}</td>" in page


@pytest.mark.parametrize("name", ["edit", "edit a name"])
def test_saving_once_more_saves_knowingly(name: str, ready: SimpleNamespace) -> None:
    role, theirs, mine = EDITS[name]
    form = FORMS[name]
    url, body = form.url(ready), form.body(ready)
    ready.clients["curator"].post(url, body | theirs)
    page = ready.clients[role].post(url, body | mine).content.decode()
    version = page.split('name="version" value="')[1].split('"')[0]
    assert ready.clients[role].post(url, body | mine | {"version": version}).status_code == 302


@pytest.mark.parametrize("version", ["-1", "0", "99999999999999999999", "x", "", "1.5"])
@pytest.mark.parametrize("name", sorted(EDITS))
def test_a_version_that_never_was_overwrites_nothing(name: str, version: str, ready: SimpleNamespace) -> None:
    form = FORMS[name]
    before = records()
    reply = ready.clients[form.may].post(form.url(ready), form.body(ready) | {"version": version})
    assert reply.status_code in (409, 422)
    assert not changed(before)


def test_a_curators_page_behind_the_pages_overwrites_nothing_either(ready: SimpleNamespace) -> None:
    plant: Specimen = ready.plants["owner's shared"]
    url = f"/admin/specimens/specimen/{plant.pk}/change/"
    client = ready.clients["curator"]
    body = {
        "version_seen": plant.version,
        "label_text": "by the curator",
        "holds": "one",
        "seen_by": "members",
    }
    assert client.post(url, body).status_code == 302
    before = records()
    stale = client.post(url, body | {"label_text": "too late"})
    assert stale.status_code == 200
    assert "Somebody changed this while you were typing" in stale.content.decode()
    assert "too late" in stale.content.decode()
    assert not changed(before)


def test_a_name_is_changed_behind_the_pages(ready: SimpleNamespace) -> None:
    name: Name = ready.name
    page = ready.clients["curator"].get(f"/admin/specimens/name/{name.pk}/change/")
    fields = {
        field: value if value is not None else ""
        for field, value in page.context_data["adminform"].form.initial.items()
    }
    body = fields | {"version_seen": name.version, "epithet": "Gilt Tassel", "introduced": "1998"}
    reply = ready.clients["curator"].post(f"/admin/specimens/name/{name.pk}/change/", body)
    assert reply.status_code == 302, reply.context_data["adminform"].form.errors
    name.refresh_from_db()
    assert (name.epithet, name.introduced.words) == ("Gilt Tassel", "1998")
