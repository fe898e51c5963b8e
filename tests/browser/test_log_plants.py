"""Log plants in a real browser: on a phone, on a desk, and without scripts."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from frondkeep.society.models import Member
from specimens.models import Specimen
from tests.browser.conftest import DESK, PHONE, PageOpener, axe, sign_in, too_wide
from tests.cast import make_cultivar, make_meeting, make_member, make_plant

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def ada() -> Member:
    return make_member("Ada Quill")


@pytest.fixture
def jonas() -> Member:
    return make_member("Jonas Wren")


def fill(page: Page, number: int, *, tag: str, came: str) -> None:
    card = page.get_by_role("group", name=f"Plant {number}", exact=True)
    card.get_by_label("What the tag says").fill(tag)
    card.get_by_label(came, exact=True).check()


def shoot(page: Page, name: str) -> None:
    import os

    if folder := os.environ.get("SHOTS"):
        page.screenshot(path=f"{folder}/{name}.png", full_page=True)


@pytest.mark.parametrize("width", [PHONE, DESK])
def test_the_three_pages_are_clean_and_fit(
    open_page: PageOpener, ada: Member, jonas: Member, width: int
) -> None:
    make_plant(ada, make_cultivar())
    make_meeting()
    page = open_page(width=width)
    sign_in(page, jonas.user)
    page.goto("/log/")
    shoot(page, f"log-{width}")
    assert axe(page) == []
    assert not too_wide(page)
    fill(page, 1, tag="silverd tassle", came="A pup or piece")
    page.get_by_label("From whom").fill("Ada Quill")
    page.get_by_role("button", name="Another plant").click()
    fill(page, 2, tag="no tag", came="Collected wild")
    shoot(page, f"log-two-{width}")
    assert axe(page) == []
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("heading", name="Look it over")).to_be_visible()
    shoot(page, f"check-{width}")
    assert axe(page) == []
    assert not too_wide(page)
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("alert").get_by_role("heading")).to_have_text("Nothing is saved yet")
    shoot(page, f"check-wrong-{width}")
    assert axe(page) == []
    page.get_by_label("Yes, it is").check()
    page.get_by_role("group", name="Was it taken from").get_by_role("radio").first.check()
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("heading", name="Logged: 2 plants")).to_be_visible()
    shoot(page, f"logged-{width}")
    assert axe(page) == []
    assert not too_wide(page)
    assert Specimen.objects.count() == 3
