"""A browser that sees pages given as text, with the real stylesheets and scripts under the real policy."""

from __future__ import annotations

import mimetypes
from collections.abc import Iterator
from pathlib import Path

import django_htmx
import pytest
from playwright.sync_api import Browser, Page, Route, sync_playwright

STATIC = Path(__file__).resolve().parents[2] / "static"
HTMX = Path(django_htmx.__file__).parent / "static"
ORIGIN = "http://frondkeep.test"
POLICY = "default-src 'self'; img-src 'self' blob:; object-src 'none'; base-uri 'none'"
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    # A module at a time: while Playwright runs, its event loop keeps Django from the database.
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=ARGUMENTS)
        yield chromium
        chromium.close()


class Site:
    """Answers every request of one browser page; nothing leaves the machine."""

    def __init__(self) -> None:
        self.answers: dict[str, tuple[int, str]] = {}
        self.asked: list[str] = []
        self.complaints: list[str] = []

    def answer(self, path: str, html: str, *, status: int = 200) -> None:
        self.answers[path] = (status, html)

    def handle(self, route: Route) -> None:
        path = route.request.url.removeprefix(ORIGIN)
        bare = path.partition("?")[0]
        self.asked.append(f"{route.request.method} {path}")
        if bare.startswith("/static/"):
            self._send_file(route, bare.removeprefix("/static/"))
        elif bare in self.answers:
            status, html = self.answers[bare]
            headers = {"Content-Security-Policy": POLICY, "Content-Type": "text/html; charset=utf-8"}
            route.fulfill(status=status, body=html, headers=headers)
        else:
            route.abort("connectionfailed")

    @staticmethod
    def _send_file(route: Route, name: str) -> None:
        found = next(place / name for place in (STATIC, HTMX) if (place / name).is_file())
        kind = mimetypes.guess_type(name)[0] or "application/octet-stream"
        route.fulfill(body=found.read_bytes(), headers={"Content-Type": kind})


def open_page(browser: Browser, site: Site, html: str, *, width: int = 390, scheme: str = "light") -> Page:
    """The page at ORIGIN/ as a browser shows it. What its console complains of is kept by the site."""
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)
    page.on("console", lambda said: site.complaints.append(said.text) if said.type == "error" else None)
    page.on("pageerror", lambda error: site.complaints.append(str(error)))
    page.route("**/*", site.handle)
    site.answer("/", html)
    page.goto(f"{ORIGIN}/")
    return page


@pytest.fixture
def site() -> Site:
    return Site()
