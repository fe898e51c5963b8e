"""No address, however it is made up, breaks a page: it is answered, or there is no such page."""

from __future__ import annotations

from types import SimpleNamespace
from urllib.parse import quote, urlencode

import pytest
from django.test import Client
from django.urls import reverse
from hypothesis import HealthCheck, given, seed, settings
from hypothesis import strategies as st

from tests.hostile.hostile_words import MARKED_UP, QUOTES, never_live
from tests.hostile.records import changed, records
from tests.test_doors import TABLE

HUGE = "9" * 20
IDS = ("-1", "0", HUGE, "9" * 5000, "1.0", "1e3", "%00", "..%2F..%2Fetc%2Fpasswd", "١", "1%20OR%201=1", "")
PATHS = (
    "/names/{}/", "/names/{}/edit/", "/names/{}/lineage/", "/same/{}/", "/same/{}/decide/?answer=same",
    "/same/decisions/{}/undo/", "/shows/{}/", "/shows/{}/entries/", "/shows/{}/entries.pdf",
    "/shows/{}/classes/1/enter/", "/import/{}/", "/import/{}/columns/", "/log/{}/", "/photos/{}/",
    "/photos/{}/small/", "/plants/{}/", "/plants/{}/lineage/", "/plants/{}/pup/", "/help/{}/",
    "/password/new/{}/x/", "/password/new/MQ/{}/", "/admin/specimens/specimen/{}/change/",
    "/admin/specimens/name/{}/history/", "/{}", "/static/{}", "/media/{}",
)  # fmt: skip
CODES = (
    "2026-0001-A", "0000-0000-A", "9999-99999999-Z", "2026-0001", "2026-1-e", "２０２６-0001", "2026--0001",
    "2026-0001-É", "2026-" + "9" * 400,
)  # fmt: skip
GETS = sorted(name for name, row in TABLE.items() if row.method == "get")
LISTS = ("plants", "plants-csv", "names", "mine", "same", "decisions")
SEARCHED = ("plants", "plants-csv", "names", "search", "suggest-names", "suggest-plants", "suggest-keepers")
FILTERED = ("plants", "plants-csv", "names")
# What pages read of their address: which pages, and nonsense to ask them.
ASKED: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "page": (LISTS, ("abc", "-1", "0", "999999", HUGE, "1.5", "9" * 5000)),
    "sort": (FILTERED, ("drop table specimens_specimen", "-logged_by__password")),
    "q": (SEARCHED, ("x" * 100_000, "a " * 3_000, "%", "\\", "\0")),
    "genus": (("plants", "names", "same", "same-pair", "same-decide"), ("abc", "-1", HUGE, "9" * 5000)),
    "keeper": (("plants", "suggest-plants"), ("abc", HUGE, "9" * 5000, "²")),
    "traits": (FILTERED, (HUGE, "abc", "-1")),
    "year": (("plants",), ("0", "99999", "1e400", "NaN", "Infinity", "2020.5")),
    "state": (("plants",), ("gone", "\0")),
    "kind": (("names",), ("nothing", "\0")),
    "as": (("plants",), ("<script>",)),
    "answer": (("decisions", "same-decide"), ("x", "undone", "\0", "same")),
    "answer=same&stands": (("same-decide",), (HUGE, "x", "-1", "9" * 5000)),
    "what=tag&place": (("log-tag",), (HUGE, "-1", "²", "1")),
    "what=tag&place=1&text": (("log-tag",), ("x" * 10_000, "\0", "a " * 3_000, MARKED_UP, QUOTES)),
    "from_keeper_id": (("suggest-plants",), (HUGE, "9" * 5000, "²")),
    "label_text": (("suggest-plants",), ("x" * 10_000, "\0", "a " * 3_000)),
    "paper": (("entry-list-paper", "judges-paper"), ("../../etc",)),
    "next": (("sign-in", "home"), ("//elsewhere.example",)),
}
PAIRS = [(name, asked) for asked, (names, _) in ASKED.items() for name in names]

pytestmark = pytest.mark.django_db


def ask(client: Client, address: str) -> tuple[int, str]:
    client.raise_request_exception = False
    reply = client.get(address)
    content = b"".join(reply.streaming_content) if reply.streaming else reply.content
    return reply.status_code, content.decode(errors="replace")


def address_of(name: str, world: SimpleNamespace) -> str:
    if name == "log-tag":
        return reverse(name)
    row = TABLE[name]
    return reverse(name, kwargs=row.kwargs(world, next(iter(row.allowed))))


def query(asked: dict[str, str]) -> str:
    return urlencode(asked, errors="surrogatepass")


@pytest.mark.parametrize("path", PATHS)
def test_an_id_that_is_none_is_no_page(path: str, world: SimpleNamespace) -> None:
    before = records()
    for role in ("curator", "committee"):
        for made_up in IDS:
            status, page = ask(world.clients[role], path.format(made_up))
            assert status < 500, (path, made_up, status)
            assert "Traceback" not in page
    assert not changed(before)


@pytest.mark.parametrize("code", CODES)
def test_a_code_that_is_none_is_no_page(code: str, world: SimpleNamespace) -> None:
    for path in ("/plants/{}/", "/plants/{}/lineage/", "/plants/{}/edit/", "/plants/{}/photo/"):
        status, _ = ask(world.clients["member"], path.format(quote(code)))
        assert status in (200, 302, 404)


@pytest.mark.parametrize(("name", "asked"), PAIRS, ids=lambda each: each)
def test_no_question_breaks_a_page(name: str, asked: str, world: SimpleNamespace) -> None:
    address = address_of(name, world)
    role = "committee" if name.endswith("paper") else "curator"
    for value in ASKED[asked][1]:
        status, page = ask(world.clients[role], f"{address}?{asked}={quote(value)}")
        assert status < 500, (name, asked, value[:60], status)
        assert never_live(page), (name, asked, value)


WORDS = st.one_of(
    st.text(max_size=30),
    st.text(alphabet="%_\\'\"\0<>&=+-*();:/.²٣", max_size=30),
    st.integers().map(str),
    st.sampled_from(["true", "None", "[]", "1,2", "growing", "lines"]),
)


@seed(20261125)
@settings(
    max_examples=40, deadline=None, database=None, suppress_health_check=list(HealthCheck), derandomize=False
)
@given(
    name=st.sampled_from(GETS),
    asked=st.dictionaries(st.one_of(st.sampled_from(sorted(ASKED)), st.text(max_size=8)), WORDS, max_size=4),
    role=st.sampled_from(["curator", "committee", "member"]),
)
def test_made_up_questions_break_no_page(
    name: str, asked: dict[str, str], role: str, world: SimpleNamespace
) -> None:
    status, page = ask(world.clients[role], f"{address_of(name, world)}?{query(asked)}")
    assert status < 500
    assert "Traceback" not in page
