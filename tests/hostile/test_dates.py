"""A date that is none, or has not come yet, is told at its field with all that was typed; nothing is kept."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from tests.hostile.bodies import FORMS, OF_EVERYBODY, ready_for_forms
from tests.hostile.hostile_words import SQL
from tests.hostile.records import changed, records

pytestmark = pytest.mark.django_db
ALL = FORMS | OF_EVERYBODY
# (form, its field for a date, another field, words typed there)
DATED = [
    ("took a pup", "taken", "label_text", "my tag"),
    ("gave away", "on", "receiver_text", "my friend"),
    ("identify", "on", "remarks", "my remarks"),
    ("ended", "on", "reason", "my reason"),
    ("edit", "acquired", "notes", "my notes"),
    ("edit", "last_seen_alive", "notes", "my notes"),
    ("edit a name", "introduced", "notes", "my notes"),
    ("add a show", "date", "venue", "my venue"),
    ("add a show", "entries_close_at", "venue", "my venue"),
    ("log", "acquired", "plants-0-notes", "my notes"),
]
NONE = (
    "31/02/2020",
    "0000",
    "99999",
    "00/00/0000",
    SQL,
    "9" * 81,
    "1/1/" + "9" * 400,
    "tomorrow week",
    "-1",
    "1e9",
    "𝟛𝟙/02/2020",
)
COMING = ("1 January 2087", "1/1/2087", "2087", "31/12/9999")
MAY_COME = {"date", "entries_close_at"}


@pytest.fixture
def ready(world: SimpleNamespace) -> SimpleNamespace:
    return ready_for_forms(world)


@pytest.mark.parametrize(("form", "field", "other", "words"), DATED)
def test_no_date_is_told(form: str, field: str, other: str, words: str, ready: SimpleNamespace) -> None:
    before = records()
    for date in NONE + (() if field in MAY_COME else COMING):
        body = ALL[form].body(ready) | {field: date, other: words}
        reply = ready.clients[ALL[form].may].post(ALL[form].url(ready), body)
        page = reply.content.decode()
        assert reply.status_code == 422, date
        assert f'id="id_{field}_error"' in page, date
        assert words in page, date
    assert not changed(before)


@pytest.mark.parametrize("day", ["01/01/0001", "31/12/9999"])
def test_a_show_at_the_end_of_time_breaks_no_page(day: str, ready: SimpleNamespace) -> None:
    form = FORMS["add a show"]
    body = form.body(ready) | {
        "date": day,
        "entries_close_at": f"{day} 21:00",
        "months_of_possession": "32000",
    }
    reply = ready.clients["committee"].post(form.url(ready), body)
    if reply.status_code == 422:
        return
    show = reply["Location"]
    body = FORMS["add a class"].body(ready)
    assert ready.clients["committee"].post(f"{show}classes/add/", body).status_code == 302
    for place in ("", "entries/", "classes/9/enter/", "classes/9/enter-for/"):
        assert ready.clients["committee"].get(show + place).status_code == 200
    for page in ("/", "/shows/"):
        assert ready.clients["member"].get(page).status_code == 200


@pytest.mark.parametrize("number", ["-1", "0", "99999999999999999999", "x", "1.5", "32768"])
@pytest.mark.parametrize(
    ("form", "field"),
    [
        ("add a show", "months_of_possession"),
        ("add a show", "most_entries"),
        ("add a show", "most_in_class"),
        ("add a class", "number"),
        ("add a class", "how_many"),
        ("took a pup", "count"),
    ],
)
def test_a_number_beyond_reason_breaks_nothing(
    form: str, field: str, number: str, ready: SimpleNamespace
) -> None:
    client = ready.clients[ALL[form].may]
    reply = client.post(ALL[form].url(ready), ALL[form].body(ready) | {field: number})
    assert reply.status_code in (302, 422)
    if reply.status_code == 422:
        assert f'id="id_{field}_error"' in reply.content.decode()
    else:
        assert int(number) <= 32767  # PostgreSQL keeps no larger number here
        assert client.get(reply["Location"]).status_code == 200
