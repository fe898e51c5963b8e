"""A plant goes from hand to hand in a real browser: with a tap, without scripts, and with nothing to complain of."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from specimens.models import Specimen
from tests.browser.conftest import PHONE, PageOpener, sign_in
from tests.browser.test_every_page import faults
from tests.test_doors import build_world

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def world() -> SimpleNamespace:
    return build_world()


def pages_of_both(world: SimpleNamespace) -> dict[str, list[str]]:
    told = world.hand_overs
    table = f"/hand-overs/table/{told['on a table'].meeting_id}/"
    gave = world.plants["owner's shared"].get_absolute_url() + "gave/"
    return {
        "member": ["/hand-overs/", table, gave.replace("gave", "got"), told["offered"].get_absolute_url()],
        "owner": ["/hand-overs/", table, gave, told["claimed"].get_absolute_url()],
    }


def test_no_page_of_either_side_has_a_fault(open_page: PageOpener, world: SimpleNamespace) -> None:
    found = {}
    for role, paths in pages_of_both(world).items():
        page = open_page()
        sign_in(page, world.people[role].user)
        for path in paths:
            found[role, path] = faults(page, path)
    assert {where: wrong for where, wrong in found.items() if wrong} == {}


def test_without_scripts_a_piece_is_given_and_taken(open_page: PageOpener, world: SimpleNamespace) -> None:
    plant = world.plants["member's shared"]
    giver = open_page(width=PHONE, scripts=False)
    sign_in(giver, world.people["member"].user)
    giver.goto(plant.get_absolute_url())
    giver.get_by_role("link", name="Gave away").click()
    giver.get_by_label("Name", exact=True).fill("Curator")
    giver.get_by_role("button", name="Keep it").click()
    giver.get_by_text("waits for Curator").wait_for()
    receiver = open_page(width=PHONE, scripts=False)
    sign_in(receiver, world.people["curator"].user)
    receiver.goto("/hand-overs/")
    receiver.get_by_role("button", name="Yes, I have it").first.click()
    receiver.get_by_text("Write it on the tag").wait_for()
    assert Specimen.objects.get(division__parent=plant).keeper == world.people["curator"].keeper
