"""The whole way once, on a phone and on a desk: from the tag to the judge's paper."""

from __future__ import annotations

import shutil
import subprocess
from datetime import date
from types import SimpleNamespace

import pytest
from playwright.sync_api import Page, expect

from frondkeep.shows.models import Entry
from frondkeep.society.models import Society
from specimens.models import Specimen
from tests.browser.conftest import DESK, PHONE, PageOpener, axe, too_wide
from tests.cast import (
    PASSWORD,
    make_committee,
    make_cultivar,
    make_curator,
    make_meeting,
    make_member,
    make_plant,
    make_species,
    when,
)
from tests.shows.make import LONG_AGO, make_class, make_show

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def society() -> SimpleNamespace:
    """Ada grows ‘Silver Tassel’; somebody once wrote ‘Silvered Tassel’; a show is to come."""
    Society.objects.create(pk=1, name="A fern society")
    ada, jonas = make_member("Ada Quill"), make_member("Jonas Wren")
    kept = {"acquired": when("2015", LONG_AGO)}
    raised = {"raiser": "T. Sorrel", "introduced": when("1998", date(1998, 1, 1), date(1998, 12, 31))}
    tassel, silvered = make_cultivar("Silver Tassel", **raised), make_cultivar("Silvered Tassel", **raised)
    make_species("ridleyi")
    parent = make_plant(ada, tassel, **kept)
    other = make_plant(jonas, silvered, **kept)
    make_meeting()
    show = make_show(months_of_possession=0)
    make_class(show, title="A staghorn, named cultivar", wants="cultivar")
    return SimpleNamespace(
        jonas=jonas, curator=make_curator(), committee=make_committee(), parent=parent, other=other, show=show
    )


def come_in(page: Page, name: str) -> None:
    page.goto("/sign-in/")
    page.get_by_label("Your name or e-mail address").fill(name)
    page.get_by_label("Password", exact=True).fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()
    expect(page).not_to_have_url("/sign-in/")


def is_well_made(page: Page) -> None:
    assert axe(page) == []
    assert not too_wide(page)


def card(page: Page, number: int):
    return page.get_by_role("group", name=f"Plant {number}", exact=True)


def log_three_plants(page: Page, parent: Specimen) -> list[str]:
    """One under its name, one misspelt, one a pup of another member's plant; returns the codes."""
    page.goto("/log/")
    tags = [
        ("Platycerium ridleyi", "Bought or given"),
        ("silverd tassle", "Don’t know"),
        ("Silver Tassel", "A pup or piece"),
    ]
    for number, (tag, came) in enumerate(tags, 1):
        if number > 1:
            page.get_by_role("button", name="Another plant").click()
        card(page, number).get_by_label("What the tag says").fill(tag)
        card(page, number).get_by_label(came, exact=True).check()
    card(page, 3).get_by_label("From whom").fill("Ada Quill")
    card(page, 3).get_by_label("Piece of which plant").fill(parent.code)
    page.get_by_role("button", name="Look it over").click()
    expect(page.get_by_role("heading", name="Look it over")).to_be_visible()
    expect(page.get_by_text("Silver Tassel").first).to_be_visible()
    is_well_made(page)
    page.get_by_label("Yes, it is Platycerium ‘Silver Tassel’").check()
    for question in page.get_by_label("Yes, another piece: log it").all():
        question.check()
    page.get_by_role("button", name="Log these 3 plants").click()
    expect(page.get_by_role("heading", name="Logged: 3 plants")).to_be_visible()
    is_well_made(page)
    return page.locator(".code-plate > .code").all_inner_texts()


def decide_that_they_are_one(page: Page) -> None:
    page.goto("/same/")
    is_well_made(page)
    page.get_by_role("link", name="Silvered Tassel").first.click()
    expect(page.get_by_role("heading", name="Are these one plant?")).to_be_visible()
    is_well_made(page)
    page.get_by_role("link", name="keep Platycerium ‘Silver Tassel’").click()
    is_well_made(page)
    page.get_by_label("Why?").fill("Compared side by side at the meeting.")
    page.get_by_role("button", name="Save this decision").click()
    page.goto("/same/decisions/")
    expect(page.get_by_text("Compared side by side at the meeting.")).to_be_visible()
    is_well_made(page)


def enter_for(page: Page, show_pk: int, code: str) -> str:
    """The committee enters Jonas's plant, numbers the entries and prints; returns the words on the paper."""
    page.goto(f"/shows/{show_pk}/entries/")
    page.get_by_role("link", name="Enter for somebody").first.click()
    page.get_by_label("Exhibitor").fill("Jonas Wren")
    page.get_by_label("What is shown").fill(code)
    is_well_made(page)
    page.get_by_role("button", name="Enter", exact=True).click()
    page.get_by_role("button", name="Number the entries").click()
    is_well_made(page)
    return pdf_words(page, "Entry list on paper (PDF)")


def pdf_words(page: Page, link: str) -> str:
    answer = page.context.request.get(page.get_by_role("link", name=link).get_attribute("href") or "")
    assert answer.headers["content-type"] == "application/pdf"
    if not shutil.which("pdftotext"):
        pytest.fail("pdftotext is missing: the paper was not read.")
    read = subprocess.run(
        ["pdftotext", "-layout", "-", "-"], input=answer.body(), capture_output=True, check=True
    )
    return read.stdout.decode()


@pytest.mark.paper
@pytest.mark.parametrize("width", [PHONE, DESK])
def test_from_the_tag_to_the_judges_paper(
    open_page: PageOpener, society: SimpleNamespace, width: int
) -> None:
    page = open_page(width=width)
    come_in(page, "Jonas Wren")
    codes = log_three_plants(page, society.parent)
    assert len(codes) == 3
    pup = Specimen.objects.get(code=codes[2])
    assert pup.division.parent == society.parent
    page.goto(f"/plants/{pup.code}/")
    expect(page.get_by_role("heading", name="Lineage")).to_be_visible()
    expect(page.locator("main")).to_contain_text(society.parent.code)
    is_well_made(page)

    curators = open_page(width=width)
    come_in(curators, "Imke Marsh")
    decide_that_they_are_one(curators)

    page.goto(f"/plants/{society.other.code}/")
    expect(page.get_by_role("heading", level=1)).to_contain_text("Platycerium ‘Silver Tassel’")
    expect(page.locator("main")).to_contain_text("Silvered Tassel")

    committees = open_page(width=width)
    come_in(committees, "Tove Okoro")
    listed = enter_for(committees, society.show.pk, society.other.code)
    assert "Platycerium ‘Silver Tassel’" in listed
    assert "Jonas Wren" in listed
    judges = pdf_words(committees, "Judges’ copy, without exhibitors (PDF)")
    assert "Platycerium ‘Silver Tassel’" in judges
    assert "Jonas" not in judges
    assert Entry.objects.get().number == 1
