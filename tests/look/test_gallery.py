"""Every component in a real browser: nobody is shut out by colour, size, narrow screens or large text."""

from __future__ import annotations

from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page

from tests.look.conftest import Site, open_page
from tests.look.gallery import gallery

pytestmark = pytest.mark.browser
RULES: dict[str, Any] = {
    "rules": {"target-size": {"enabled": True}, "color-contrast-enhanced": {"enabled": True}}
}
# A link within a sentence or a heading is as tall as its line; everything else is as large as a finger.
TOO_SMALL = """least => [...document.querySelectorAll('a, button, summary, input, select, textarea, .chip')]
  .filter(e => { const r = e.getBoundingClientRect(); return r.width > 1 && r.height > 1
    && (r.height < least - 0.1 || r.width < least - 0.1)
    && !e.matches('.tick input, .plant-name a') && !e.closest('.skip-link'); })
  .map(e => e.outerHTML.slice(0, 80))"""
SMALL_PRINT = """[...document.querySelectorAll('body *')]
  .filter(e => [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())
    && parseFloat(getComputedStyle(e).fontSize) < 14.5).map(e => e.outerHTML.slice(0, 80))"""
# A chip shows the focus of its hidden box, a card that of its stretched link.
OUTLINED = """[document.activeElement, document.activeElement.nextElementSibling,
    document.activeElement.closest('.plant-card')].some(e => e && getComputedStyle(e).outlineStyle !== 'none'
    && parseFloat(getComputedStyle(e).outlineWidth) >= 2)"""
SIDEWAYS = "document.documentElement.scrollWidth - innerWidth"


def violations(page: Page) -> list[tuple[str, str]]:
    found = Axe().run(page, options=RULES).response["violations"]
    return [(rule["id"], node["html"][:100]) for rule in found for node in rule["nodes"]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_axe_finds_nothing(browser: Browser, site: Site, width: int, scheme: str) -> None:
    page = open_page(browser, site, gallery(), width=width, scheme=scheme)
    assert violations(page) == []
    assert site.complaints == []


@pytest.mark.parametrize(("page_class", "least"), [("", 44), ("page-log", 48)])
def test_everything_to_press_is_as_large_as_a_finger(
    browser: Browser, site: Site, page_class: str, least: int
) -> None:
    page = open_page(browser, site, gallery(page_class=page_class))
    assert page.evaluate(TOO_SMALL, least) == []


def test_there_is_no_small_print(browser: Browser, site: Site) -> None:
    assert open_page(browser, site, gallery()).evaluate(SMALL_PRINT) == []


@pytest.mark.parametrize("width", [320, 390, 700, 1280])
def test_no_page_scrolls_sideways(browser: Browser, site: Site, width: int) -> None:
    assert open_page(browser, site, gallery(), width=width).evaluate(SIDEWAYS) <= 0


def test_no_page_scrolls_sideways_on_a_small_phone_with_text_twice_as_large(
    browser: Browser, site: Site
) -> None:
    page = open_page(browser, site, gallery(), width=320)
    page.evaluate("document.documentElement.style.fontSize = '212.5%'")
    assert page.evaluate("getComputedStyle(document.body).fontSize") == "34px"
    assert page.evaluate(SIDEWAYS) <= 0


@pytest.mark.parametrize(("width", "shown"), [(390, 2), (900, 4), (1280, 6)])
def test_the_head_is_one_line_and_more_holds_the_rest(
    browser: Browser, site: Site, width: int, shown: int
) -> None:
    page = open_page(browser, site, gallery(), width=width)
    assert page.locator(".site-nav a:visible").count() == shown
    page.locator(".site-more > summary").click()
    assert page.locator(".site-more-panel a:visible").count() == 8 - shown
    assert page.locator(".site-head").bounding_box()["height"] < 60


def test_bars_are_drawn_by_attributes_the_policy_lets_through(browser: Browser, site: Site) -> None:
    page = open_page(browser, site, gallery(), width=1280)
    [track, possible, sure] = [
        page.locator(f".composition-bar .bar-{part}").bounding_box()["width"]
        for part in ("track", "possible", "sure")
    ]
    assert possible / track == pytest.approx(0.5, abs=0.01)
    assert sure / track == pytest.approx(0.255, abs=0.01)
    assert page.locator(".bar-for").get_attribute("stroke-dasharray") == "84.5 200"


def test_paper_shows_neither_controls_nor_colour(browser: Browser, site: Site) -> None:
    page = open_page(browser, site, gallery(), scheme="dark")
    page.emulate_media(media="print")
    assert (
        page.locator(".site-head, .action-bar, .filter-panel, .button-row, .pager")
        .locator("visible=true")
        .count()
        == 0
    )
    inks = page.evaluate("[...document.querySelectorAll('main *')].map(e => getComputedStyle(e).color)")
    assert set(inks) == {"rgb(0, 0, 0)"}


def test_what_has_the_focus_can_be_seen(browser: Browser, site: Site) -> None:
    page = open_page(browser, site, gallery())
    page.evaluate("document.activeElement.blur()")
    for _ in range(12):
        page.keyboard.press("Tab")
        assert page.evaluate(OUTLINED), page.evaluate("document.activeElement.outerHTML.slice(0, 80)")
