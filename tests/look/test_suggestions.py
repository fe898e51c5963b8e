"""Suggestions under a text field help, and never take away what was typed."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.look.conftest import Site, open_page
from tests.look.scripted import scripted

pytestmark = pytest.mark.browser
FORM = """<form method="post" action="/log">
<label for="from">From whom</label><input id="from" name="from_member" value="7">
<label for="name">I think it is</label>
<input id="name" name="name" data-suggest-url="/suggest" data-suggest-with="[name=from_member]"
  data-suggest-into="[name=name_id]">
<input type="hidden" name="name_id"><button class="button">Save</button></form>"""
ANSWER = """<p>Not an option</p>
<li role="option" data-value="Silver Tassel" data-id="4"><i lang="la">Platycerium</i> ‘Silver Tassel’</li>
<li role="option" data-value="Silvered Tassel" data-id="9">‘Silvered Tassel’ <small>one plant</small></li>"""


@pytest.fixture
def page(browser: Browser, site: Site) -> Page:
    site.answer("/suggest", ANSWER)
    page = open_page(browser, site, scripted(FORM))
    expect(field(page)).to_have_attribute("role", "combobox")
    return page


def field(page: Page):
    return page.locator("#name")


def type_and_wait(page: Page, words: str = "silver") -> None:
    field(page).press_sequentially(words)
    expect(page.get_by_role("option")).to_have_count(2)


def test_what_was_typed_is_asked_for_with_the_fields_it_depends_on(page: Page, site: Site) -> None:
    type_and_wait(page)
    asked = [line for line in site.asked if "/suggest" in line]
    assert asked == ["GET /suggest?q=silver&from_member=7"]


def test_the_count_is_said_to_those_who_cannot_see_it(page: Page) -> None:
    type_and_wait(page)
    expect(page.locator(".combobox [role=status]")).to_have_text("2 suggestions.")
    expect(field(page)).to_have_attribute("aria-expanded", "true")


def test_arrow_and_enter_take_a_suggestion_without_sending_the_form(page: Page, site: Site) -> None:
    type_and_wait(page)
    field(page).press("ArrowDown")
    field(page).press("ArrowDown")
    assert page.evaluate("document.activeElement.id") == "name"
    active = field(page).get_attribute("aria-activedescendant")
    expect(page.locator(f"#{active}")).to_have_attribute("aria-selected", "true")
    field(page).press("Enter")
    expect(field(page)).to_have_value("Silvered Tassel")
    expect(page.locator("[name=name_id]")).to_have_value("9")
    assert not any(line.startswith("POST") for line in site.asked)


def test_past_the_last_suggestion_one_is_back_in_the_field(page: Page) -> None:
    type_and_wait(page)
    for _ in range(3):
        field(page).press("ArrowDown")
    assert field(page).get_attribute("aria-activedescendant") is None


def test_a_tap_takes_a_suggestion_and_keeps_the_focus(page: Page) -> None:
    type_and_wait(page)
    page.get_by_role("option").first.click()
    expect(field(page)).to_have_value("Silver Tassel")
    expect(field(page)).to_be_focused()
    expect(page.get_by_role("option").first).to_be_hidden()


def test_leaving_the_field_keeps_words_that_match_nothing(page: Page) -> None:
    type_and_wait(page, "silverd tassle")
    field(page).press("Tab")
    expect(field(page)).to_have_value("silverd tassle")
    expect(page.locator("[name=name_id]")).to_have_value("")
    expect(page.get_by_role("option").first).to_be_hidden()


def test_escape_closes_the_suggestions_and_nothing_else(page: Page) -> None:
    type_and_wait(page)
    field(page).press("Escape")
    expect(field(page)).to_have_value("silver")
    expect(field(page)).to_have_attribute("aria-expanded", "false")


def test_typing_on_after_a_choice_forgets_whom_it_meant(page: Page) -> None:
    type_and_wait(page)
    page.get_by_role("option").first.click()
    field(page).press("End")
    field(page).press_sequentially("s")
    expect(page.locator("[name=name_id]")).to_have_value("")


def test_without_an_answer_the_field_is_a_plain_field(browser: Browser, site: Site) -> None:
    page = open_page(browser, site, scripted(FORM))
    with page.expect_event("requestfailed"):
        field(page).press_sequentially("silver")
    expect(field(page)).to_have_value("silver")
    expect(field(page)).to_have_attribute("aria-expanded", "false")


def test_a_field_that_comes_later_is_dressed_too(page: Page) -> None:
    page.evaluate(
        """() => { const card = document.createElement('div'); card.dataset.card = '';
        card.innerHTML = '<label for="later">Later</label><input id="later" data-suggest-url="/suggest">';
        document.querySelector('form').append(card);
        card.dispatchEvent(new Event('card-added', {bubbles: true})); }"""
    )
    expect(page.locator("#later")).to_have_attribute("role", "combobox")
