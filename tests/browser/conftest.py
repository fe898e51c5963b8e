"""A real browser in front of the whole software: pages, scripts and policy as they are served."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from django.test import Client
from playwright.sync_api import Browser, BrowserContext, Page, sync_playwright

from frondkeep.society.models import User

CHROMIUM = Path("/usr/bin/chromium")
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
PHONE, DESK = 390, 1280
# Switched off in axe as it comes; without them a page may be found clean that nobody can tap or read.
SWITCHED_ON = ("target-size", "color-contrast-enhanced")
PageOpener = Callable[..., Page]


@pytest.fixture(scope="module")
def chromium() -> Iterator[Browser]:
    if not CHROMIUM.exists():
        missing = f"No browser at {CHROMIUM}: the pages were not looked at."
        if os.environ.get("CI"):
            pytest.fail(missing)
        pytest.skip(missing)
    # While Playwright runs, its event loop makes Django believe that it is called from asynchronous code.
    before = os.environ.get("DJANGO_ALLOW_ASYNC_UNSAFE")
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        yield browser
        browser.close()
    if before is None:
        del os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"]
    else:
        os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = before


@pytest.fixture
def open_page(chromium: Browser, live_server: Any) -> Iterator[PageOpener]:
    """Opens an empty page of a browser of its own: `open_page(width=DESK, scripts=False)`; addresses are paths.

    What the browser complains of (errors of scripts, what the content policy refused) fails the test.
    """
    contexts: list[BrowserContext] = []
    complaints: list[str] = []

    def opened(*, width: int = PHONE, scripts: bool = True, **options: Any) -> Page:
        context = chromium.new_context(
            base_url=live_server.url,
            viewport={"width": width, "height": 844 if width < 600 else 900},
            java_script_enabled=scripts,
            **options,
        )
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on("console", lambda said: complaints.append(said.text) if is_complaint(said) else None)
        return page

    yield opened
    for context in contexts:
        context.close()
    assert complaints == []


def is_complaint(said: Any) -> bool:
    """An error in the browser's console; answers of 4xx are told there too, and are meant."""
    return said.type == "error" and "the server responded with a status of 4" not in said.text


def sign_in(page: Page, user: User) -> None:
    """Signed in as this user, without going through the sign-in page."""
    client = Client()
    client.force_login(user)
    session = client.cookies[settings.SESSION_COOKIE_NAME].value
    cookie = {"name": settings.SESSION_COOKIE_NAME, "value": session, "domain": "localhost", "path": "/"}
    page.context.add_cookies([cookie])


def axe(page: Page) -> list[str]:
    """What axe finds wrong with the page: each rule with the places; an empty list for a clean page."""
    options = {"rules": {rule: {"enabled": True} for rule in SWITCHED_ON}}
    found = Axe().run(page, options=options).response["violations"]
    return [
        f"{wrong['id']}: {node['target']} {node.get('failureSummary', '')}"
        for wrong in found
        for node in wrong["nodes"]
    ]


def too_wide(page: Page) -> bool:
    """Whether the page must be scrolled sideways."""
    wide: bool = page.evaluate("document.documentElement.scrollWidth > document.documentElement.clientWidth")
    return wide
