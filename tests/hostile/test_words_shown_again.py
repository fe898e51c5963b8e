"""Words that would run as a script stand as words wherever they are shown: pages, lists, papers, records."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.urls import reverse

from tests.cast import make_cultivar, make_household, make_meeting, make_member, make_plant, make_pup, when
from tests.hostile.conftest import signed_in
from tests.hostile.hostile_words import BROKEN_OUT, MARKED_UP, ON_A_TAG, never_live
from tests.shows.make import LONG_AGO, make_class, make_entry, make_show
from tests.test_doors import ADMIN

pytestmark = pytest.mark.django_db
BOTH = f"{MARKED_UP} {BROKEN_OUT}"


@pytest.fixture
def poisoned(world: SimpleNamespace) -> SimpleNamespace:
    """A society in which every name, tag and note is an attack."""
    keeper = make_member(f"Ada {BOTH}", number=MARKED_UP[:30], notes=BOTH)
    other = make_member(f"Bo {BOTH}")
    make_household(f"House {BOTH}", other)
    name = make_cultivar(BOTH, raiser=BOTH, origin=BOTH, notes=BOTH)
    make_cultivar(f"{BOTH} Major", "Asplenium")
    twin = make_cultivar(f"{BOTH[:-1]}", notes=BOTH)
    meeting = make_meeting(BOTH)
    words = {
        "label_text": BOTH, "notes": BOTH, "from_words": BOTH, "mount": BOTH, "own_number": MARKED_UP,
        "society_number": MARKED_UP, "now_with": BOTH, "state_reason": BOTH, "meeting": meeting,
        "growing_place": BOTH, "acquired": when("2015", LONG_AGO),
    }  # fmt: skip
    plant = make_plant(keeper, name, **words)
    make_pup(plant, other, **words)
    for label in ON_A_TAG.values():
        make_plant(keeper, twin, label_text=label)
    show = make_show(name=BOTH, venue=BOTH)
    shown = make_class(show, 1, BOTH, section=BOTH)
    make_entry(shown, keeper, plant, title=BOTH, note=BOTH)
    world.attack = SimpleNamespace(keeper=keeper, name=name, plant=plant, show=show, twin=twin)
    return world


def pages_about(world: SimpleNamespace) -> list[str]:
    attack = world.attack
    code, pk, show = attack.plant.code, attack.name.pk, attack.show.pk
    about_plant = [
        f"/plants/{code}/{place}"
        for place in ("", "lineage/", "edit/", "identify/", "pup/", "origin/", "ended/", "photo/")
    ]
    about_name = [f"/names/{pk}/{place}" for place in ("", "lineage/", "edit/")]
    about_show = [
        f"/shows/{show}/{place}" for place in ("", "entries/", "classes/1/enter/", "classes/1/enter-for/")
    ]
    lists = [
        "/", "/mine/", "/plants/?state=any", "/plants/?as=lines&state=any", "/names/?old=on", "/shows/", "/same/",
        "/same/decisions/", "/proposals/", "/log/", "/suggest/names/?q=script", "/suggest/keepers/?q=ada",
        "/suggest/plants/?q=script", f"/search/?q={code}", "/search/?q=script", f"/plants/?q={MARKED_UP}",
    ]  # fmt: skip
    pairs = [f"/same/{pair}/" for pair in world.pair.__class__.objects.values_list("pk", flat=True)[:4]]
    return about_plant + about_name + about_show + lists + pairs


@pytest.mark.parametrize("role", ["curator", "committee", "keeper"])
def test_no_page_runs_what_somebody_typed(role: str, poisoned: SimpleNamespace) -> None:
    client = signed_in(poisoned.attack.keeper) if role == "keeper" else poisoned.clients[role]
    shown = 0
    for address in pages_about(poisoned):
        reply = client.get(address, follow=True)
        page = reply.content.decode()
        assert reply.status_code in (200, 404), address
        assert never_live(page), address
        shown += "&lt;script&gt;alert(1)" in page
    assert shown > 8


def test_records_behind_the_pages_run_nothing(poisoned: SimpleNamespace) -> None:
    for model, roles in ADMIN.items():
        client = poisoned.clients[sorted(roles)[0]]
        listing = client.get(reverse(f"admin:{model}_changelist"))
        assert never_live(listing.content.decode()), model
        for one in listing.context_data["cl"].queryset[:3]:
            for place in ("change", "history"):
                page = client.get(reverse(f"admin:{model}_{place}", args=[one.pk]))
                assert never_live(page.content.decode()), (model, place)


def test_the_paper_is_printed_or_says_which_characters_it_lacks(poisoned: SimpleNamespace) -> None:
    for paper in ("entries.pdf", "judges.pdf"):
        reply = poisoned.clients["committee"].get(f"/shows/{poisoned.attack.show.pk}/{paper}?stand-in=on")
        assert reply.status_code == 200, reply.content.decode()[:2000]
        assert reply.content.startswith(b"%PDF")
        assert "\n" not in reply["Content-Disposition"]
        assert "<" not in reply["Content-Disposition"]


def test_a_table_for_a_spreadsheet_is_no_page(poisoned: SimpleNamespace) -> None:
    reply = poisoned.clients["curator"].get("/plants.csv")
    table = reply.getvalue().decode("utf-8-sig")
    assert reply["Content-Type"].startswith("text/csv")
    assert reply["X-Content-Type-Options"] == "nosniff"
    assert "attachment" in reply["Content-Disposition"]
    assert MARKED_UP in table


def test_every_answer_forbids_scripts_of_others(poisoned: SimpleNamespace) -> None:
    for address in (f"/plants/{poisoned.attack.plant.code}/", "/nowhere/", "/log/"):
        policy = poisoned.clients["curator"].get(address)["Content-Security-Policy"]
        assert "default-src 'self'" in policy
        assert "unsafe" not in policy
