"""A form is sent once, and whoever sent it hears when nothing came back."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.look.conftest import Site, open_page
from tests.look.scripted import scripted

pytestmark = pytest.mark.browser
PIECE = """<form method="post" action="/save" hx-post="/save" hx-target="#answer">
<label for="tag">What the tag says</label><input id="tag" name="tag" value="silverd tassle">
<button class="button">Save</button></form><div id="answer">nothing yet</div>"""
FIVE_TAPS = """() => { const button = document.querySelector('button');
for (let tap = 0; tap < 5; tap++) setTimeout(() => button.click(), tap * 20); }"""
PLAIN = '<form method="post" action="/save"><button class="button">Save</button></form>'


def opened(browser: Browser, site: Site, main: str) -> Page:
    """A page whose scripts, htmx among them, have run: that is before its load event."""
    return open_page(browser, site, scripted(main))


def press_save(page: Page) -> None:
    page.get_by_role("button", name="Save").click()


def posts_of_five_taps(browser: Browser, site: Site, form: str) -> int:
    page = opened(browser, site, form)
    # The answer never comes, so that the page stays where the taps fall.
    page.route("**/save", lambda route: site.asked.append("POST /save"))
    page.evaluate(FIVE_TAPS)
    page.wait_for_timeout(400)
    return site.asked.count("POST /save")


def test_five_taps_send_a_form_once(browser: Browser, site: Site) -> None:
    assert posts_of_five_taps(browser, site, PLAIN) == 1


def test_a_form_that_may_be_sent_often_is(browser: Browser, site: Site) -> None:
    assert posts_of_five_taps(browser, site, PLAIN.replace("<form", "<form data-send-often")) > 1


def test_a_button_that_is_sending_says_so_and_keeps_the_focus(browser: Browser, site: Site) -> None:
    page = opened(browser, site, PIECE)
    page.route("**/save", lambda route: site.asked.append("POST /save"))
    press_save(page)
    button = page.get_by_role("button", name="Save")
    expect(button).to_have_attribute("aria-disabled", "true")
    expect(button).to_be_focused()


def test_the_button_can_be_pressed_again_after_an_answer(browser: Browser, site: Site) -> None:
    site.answer("/save", "saved as 2026-0142-E")
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.locator("#answer")).to_have_text("saved as 2026-0142-E")
    expect(page.get_by_role("button", name="Save")).not_to_have_attribute("aria-disabled", "true")
    press_save(page)
    page.wait_for_timeout(200)
    assert site.asked.count("POST /save") == 2


@pytest.mark.parametrize("status", [409, 422])
def test_a_form_that_comes_back_with_errors_is_shown(browser: Browser, site: Site, status: int) -> None:
    site.answer("/save", "We could not read this date", status=status)
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.locator("#answer")).to_have_text("We could not read this date")
    expect(page.locator("#send-trouble")).to_be_empty()


def test_a_lost_signal_is_said_and_nothing_typed_is_lost(browser: Browser, site: Site) -> None:
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.get_by_role("alert")).to_contain_text("What you typed is still here")
    expect(page.locator("#tag")).to_have_value("silverd tassle")
    expect(page.get_by_role("button", name="Save")).not_to_have_attribute("aria-disabled", "true")


@pytest.mark.parametrize(
    ("status", "words"), [(403, "refused"), (404, "nothing there"), (500, "it was not you")]
)
def test_a_failure_is_said_and_nothing_typed_is_lost(
    browser: Browser, site: Site, status: int, words: str
) -> None:
    site.answer("/save", "<!doctype html><title>x</title>", status=status)
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.get_by_role("alert")).to_contain_text(words)
    expect(page.locator("#answer")).to_have_text("nothing yet")
    expect(page.locator("#tag")).to_have_value("silverd tassle")


def test_the_sign_in_page_never_takes_the_place_of_a_piece(browser: Browser, site: Site) -> None:
    site.answer("/save", "\n<!doctype html><title>Sign in</title>")
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.get_by_role("alert")).to_contain_text("You have been signed out")
    expect(page.locator("#answer")).to_have_text("nothing yet")


def test_trouble_is_forgotten_when_the_next_try_goes_well(browser: Browser, site: Site) -> None:
    page = opened(browser, site, PIECE)
    press_save(page)
    expect(page.get_by_role("alert")).to_contain_text("still here")
    site.answer("/save", "saved")
    press_save(page)
    expect(page.locator("#answer")).to_have_text("saved")
    expect(page.locator("#send-trouble")).to_be_empty()


def test_the_errors_have_the_focus_when_a_page_opens_with_them(browser: Browser, site: Site) -> None:
    summary = '<div class="error-summary" role="alert" tabindex="-1"><h2>Nothing is saved yet</h2></div>'
    expect(opened(browser, site, summary + PLAIN).locator(".error-summary")).to_be_focused()


def test_the_token_against_forged_forms_goes_with_every_request(browser: Browser, site: Site) -> None:
    page = opened(browser, site, PIECE)
    with page.expect_request("**/save") as sent:
        press_save(page)
    assert "x-csrftoken" in sent.value.headers
