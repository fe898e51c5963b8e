"""Log plants in a real browser: on a phone, on a desk, and without scripts."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PIL import Image
from playwright.sync_api import Locator, Page, expect

from frondkeep.society.models import Member
from specimens.models import Photo, Specimen
from tests.browser.conftest import DESK, PHONE, PageOpener, axe, sign_in, too_wide
from tests.cast import make_cultivar, make_meeting, make_member, make_plant, make_species

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]
# Links within a sentence are as tall as their line.
TOO_SMALL = """least => [...document.querySelectorAll('main button, main summary, main input, main select, main .chip')]
  .filter(e => { const r = e.getBoundingClientRect(); return r.width > 1 && r.height > 1 && r.height < least - 0.1; })
  .map(e => e.outerHTML.slice(0, 80))"""

# Waited for inside the page: waiting from outside would evaluate words, which the content policy refuses.
AWAIT_PHOTO = """() => { window.shrunk = new Promise(done => document.addEventListener(
  'photo-ready', event => done(event.detail.files[0].name), {once: true})); }"""


@pytest.fixture
def ada() -> Member:
    return make_member("Ada Quill")


@pytest.fixture
def jonas() -> Member:
    return make_member("Jonas Wren")


def card(page: Page, number: int) -> Locator:
    return page.get_by_role("group", name=f"Plant {number}", exact=True)


def fill(page: Page, number: int, *, tag: str, came: str) -> None:
    card(page, number).get_by_label("What the tag says").fill(tag)
    card(page, number).get_by_label(came, exact=True).check()


def look_over(page: Page) -> None:
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("heading", name="Look it over")).to_be_visible()


def look_at(page: Page, name: str, width: int) -> None:
    """Clean, no wider than the screen, everything large enough for a thumb."""
    if folder := os.environ.get("SHOTS"):
        page.screenshot(path=f"{folder}/{name}-{width}.png", full_page=True)
    assert axe(page) == []
    assert not too_wide(page)
    assert page.evaluate(TOO_SMALL, 48) == []


@pytest.mark.parametrize("width", [PHONE, DESK])
def test_every_step_is_clean_and_fits(open_page: PageOpener, ada: Member, jonas: Member, width: int) -> None:
    make_plant(ada, make_cultivar())
    make_meeting()
    page = open_page(width=width)
    sign_in(page, jonas.user)
    page.goto("/log/")
    look_at(page, "log", width)
    fill(page, 1, tag="silverd tassle", came="A pup or piece")
    card(page, 1).get_by_label("From whom").fill("Ada Quill")
    page.get_by_role("button", name="Another plant").click()
    fill(page, 2, tag="no tag", came="Collected wild")
    card(page, 1).get_by_text("More about this plant").click()
    look_at(page, "log-two", width)
    look_over(page)
    look_at(page, "check", width)
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("alert").get_by_role("heading")).to_contain_text("Nothing is saved yet")
    look_at(page, "check-wrong", width)
    page.get_by_label("Yes, it is").check()
    page.get_by_role("group", name="Was it taken from").get_by_role("radio").first.check()
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("heading", name="Logged: 2 plants")).to_be_visible()
    look_at(page, "logged", width)
    assert Specimen.objects.count() == 3


def test_the_smallest_phone_needs_no_sideways_scroll(open_page: PageOpener, jonas: Member) -> None:
    page = open_page(width=320)
    sign_in(page, jonas.user)
    page.goto("/log/")
    assert not too_wide(page)
    fill(page, 1, tag="x" * 500, came="Don’t know")
    page.get_by_label("What the tag says").blur()
    expect(page.get_by_label("Which genus is")).to_be_visible()
    assert not too_wide(page)
    look_over(page)
    assert not too_wide(page)
    page.get_by_label("Which genus is").select_option("not known")
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    assert not too_wide(page)


def test_without_scripts_it_is_plainer_and_whole(open_page: PageOpener, ada: Member, jonas: Member) -> None:
    parent = make_plant(ada, make_cultivar())
    page = open_page(scripts=False)
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="silverd tassle", came="A pup or piece")
    card(page, 1).get_by_label("From whom").fill("Ada Quill")
    card(page, 1).get_by_label("Piece of which plant").fill(parent.code)
    page.get_by_role("button", name="Another plant").click()
    expect(card(page, 1).get_by_label("What the tag says")).to_have_value("silverd tassle")
    fill(page, 2, tag="no tag", came="Don’t know")
    look_over(page)
    page.get_by_label("Yes, it is").check()
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("heading", name="Logged: 2 plants")).to_be_visible()
    pup = Specimen.objects.get(division__parent=parent)
    assert pup.code in page.locator(".code-plates").inner_text()


def test_without_scripts_only_what_fits_how_it_came_is_shown(open_page: PageOpener, jonas: Member) -> None:
    page = open_page(scripts=False)
    sign_in(page, jonas.user)
    page.goto("/log/")
    parent, spores = page.get_by_label("Piece of which plant"), page.get_by_label("Whose spores")
    expect(parent).to_be_hidden()
    page.get_by_label("A pup or piece").check()
    expect(parent).to_be_visible()
    page.get_by_label("From spores").check()
    expect(parent).to_be_hidden()
    expect(spores).to_be_visible()


def test_a_slip_is_answered_on_its_card_and_not_asked_twice(
    open_page: PageOpener, ada: Member, jonas: Member
) -> None:
    name = make_cultivar()
    make_plant(ada, name)
    page = open_page()
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="silverd tassle", came="Bought or given")
    expect(card(page, 1).get_by_text("One member grows it.")).to_be_visible()
    card(page, 1).get_by_label("Yes, it is").check()
    look_at(page, "log-answered", PHONE)
    look_over(page)
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    assert Specimen.objects.get(label_text="silverd tassle").identification.name == name


def test_a_few_taps_tie_a_pup_to_its_parent(open_page: PageOpener, ada: Member, jonas: Member) -> None:
    parent = make_plant(ada, make_cultivar())
    make_plant(ada, make_species())
    page = open_page()
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="Silver Tassel", came="A pup or piece")
    page.get_by_label("From whom").press_sequentially("ada")
    page.get_by_role("option", name="Ada Quill").click()
    page.get_by_label("Piece of which plant").focus()
    offered = page.locator(".suggestions:visible").get_by_role("option")
    expect(offered).to_have_count(1)
    look_at(page, "log-parent", PHONE)
    offered.click()
    expect(page.get_by_label("Piece of which plant")).to_have_value(parent.code)
    look_over(page)
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    assert Specimen.objects.get(division__parent=parent).keeper == jonas.keeper


def test_cards_come_and_go_without_a_round_to_the_server(open_page: PageOpener, jonas: Member) -> None:
    page = open_page()
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="no tag", came="Don’t know")
    page.get_by_role("button", name="Another plant").click()
    expect(card(page, 2).get_by_label("What the tag says")).to_be_focused()
    page.get_by_role("button", name="Another plant").click()
    fill(page, 3, tag="unknown", came="Don’t know")
    card(page, 2).get_by_text("More about this plant").click()
    card(page, 2).get_by_role("button", name="Leave this plant out").click()
    expect(card(page, 2).get_by_label("What the tag says")).to_have_value("unknown")
    look_over(page)
    page.get_by_role("button", name="Log these 2 plants").click()
    expect(page.get_by_role("heading", name="Logged: 2 plants")).to_be_visible()


def test_two_tabs_and_a_double_tap_give_one_plant(open_page: PageOpener, jonas: Member) -> None:
    page = open_page()
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="no tag", came="Don’t know")
    look_over(page)
    page.get_by_role("button", name="Log this plant").dblclick()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    codes = page.locator(".code-plates").inner_text()
    page.go_back()
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    assert page.locator(".code-plates").inner_text() == codes
    assert Specimen.objects.count() == 1


@pytest.mark.parametrize("scripts", [True, False])
def test_signed_out_while_typing_nothing_is_lost(open_page: PageOpener, jonas: Member, scripts: bool) -> None:
    page = open_page(scripts=scripts)
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="no tag", came="Don’t know")
    page.context.clear_cookies(name="session")
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("heading", name="You have been signed out")).to_be_visible()
    if scripts:
        look_at(page, "signed-out", PHONE)
    sign_in(page, jonas.user)
    page.get_by_role("button", name="Send it again").click()
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()


def test_a_photo_goes_with_its_plant(
    open_page: PageOpener, jonas: Member, tmp_path: Path, settings: object
) -> None:
    settings.DATA_DIR, settings.MEDIA_ROOT = tmp_path, tmp_path / "photos"
    Image.new("RGB", (3000, 2000), "green").save(tmp_path / "fern.jpg")
    page = open_page()
    sign_in(page, jonas.user)
    page.goto("/log/")
    fill(page, 1, tag="no tag", came="Don’t know")
    page.evaluate(AWAIT_PHOTO)
    page.get_by_label("Photo").set_input_files(tmp_path / "fern.jpg")
    assert page.evaluate("() => window.shrunk") == "fern.jpg"
    look_over(page)
    page.get_by_role("button", name="Log this plant").click()
    expect(page.get_by_role("heading", name="Logged: one plant")).to_be_visible()
    assert Photo.objects.get().width == 2000
