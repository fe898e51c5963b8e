"""Every page of the software, at both widths: axe finds nothing, and nothing must be scrolled sideways."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.urls import reverse
from playwright.sync_api import Page

from tests.browser.conftest import DESK, PHONE, PageOpener, axe, sign_in, too_wide
from tests.test_doors import TABLE, build_world

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
# What is no page: files, fragments, and addresses that lead on.
NO_PAGES = {
    "plants-csv", "photo", "photo-small", "suggest-names", "suggest-plants", "suggest-keepers", "health", "log-tag",
    "entry-list-paper", "judges-paper", "sign-in",
}  # fmt: skip
LOOKERS = ("curator", "committee")
# What a member sees otherwise than the curator does.
MEMBERS_PAGES = (
    "home",
    "mine",
    "log",
    "plants",
    "plant",
    "plant-pup",
    "name",
    "names",
    "show",
    "enter-class",
    "help",
)


@pytest.fixture
def world() -> SimpleNamespace:
    return build_world()


def pages_of(world: SimpleNamespace, role: str) -> dict[str, str]:
    """The first allowed address of every page that earlier lookers do not see, by name."""
    found = {}
    for name, row in TABLE.items():
        earlier = LOOKERS[: LOOKERS.index(role)]
        for which, allowed in row.allowed.items():
            seen_before = any(one in allowed for one in earlier)
            if row.method == "get" and name not in NO_PAGES and role in allowed and not seen_before:
                found.setdefault(name, reverse(name, kwargs=row.kwargs(world, which)))
    return found


def faults(page: Page, path: str) -> list[str]:
    page.goto(path)
    found = []
    for width in (PHONE, DESK):
        # As tall as the page: a bar that sticks to the foot of the screen then covers nothing.
        page.set_viewport_size({"width": width, "height": 900})
        page.set_viewport_size(
            {"width": width, "height": page.evaluate("document.documentElement.scrollHeight + 90")}
        )
        found += [f"{width} px: {fault}" for fault in axe(page)]
        if too_wide(page):
            found.append(f"{width} px: must be scrolled sideways")
    return found


@pytest.mark.parametrize("role", LOOKERS)
def test_no_page_has_a_fault(open_page: PageOpener, world: SimpleNamespace, role: str) -> None:
    page = open_page()
    sign_in(page, world.people[role].user)
    pages = pages_of(world, role)
    assert pages
    found = {name: faults(page, path) for name, path in pages.items()}
    assert {name: wrong for name, wrong in found.items() if wrong} == {}


def test_a_members_pages_have_no_fault(open_page: PageOpener, world: SimpleNamespace) -> None:
    page = open_page()
    sign_in(page, world.people["owner"].user)
    found = {}
    for name in MEMBERS_PAGES:
        which = next(iter(TABLE[name].allowed))
        found[name] = faults(page, reverse(name, kwargs=TABLE[name].kwargs(world, which)))
    assert {name: wrong for name, wrong in found.items() if wrong} == {}


def test_the_door_has_no_fault(open_page: PageOpener, world: SimpleNamespace) -> None:
    page = open_page()
    assert {path: faults(page, path) for path in ("/sign-in/", "/password/forgotten/")} == {
        "/sign-in/": [],
        "/password/forgotten/": [],
    }
