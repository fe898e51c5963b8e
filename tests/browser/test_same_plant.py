"""Perhaps the same plant, in a browser: clean for axe, not too wide, and decided without scripts."""

from __future__ import annotations

import pytest

from frondkeep.society.models import Member
from lineage.models import Ruling, Suspicion
from specimens.models import Name
from specimens.services.claims import claim_parentage
from specimens.services.sowings import Source
from tests.browser.conftest import DESK, PHONE, PageOpener, axe, sign_in, too_wide
from tests.cast import make_cultivar, make_curator, make_member, make_plant, make_species

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]


@pytest.fixture
def curator(transactional_db: None) -> Member:
    return make_curator()


@pytest.fixture
def pair(curator: Member) -> Suspicion:
    tassel = make_cultivar("Silver Tassel", raiser="T. Okoro", origin="a chance find in a mixed pan")
    other = make_cultivar("Silvered Tassel", checked=False)
    parents = tuple(Source(name=make_species(each)) for each in ("veitchii", "hillii"))
    claim_parentage(tassel, says="cross", parents=parents, ground="record")
    make_plant(make_member("Ada Quill"), tassel, label_text="S. Tassel")
    make_plant(make_member("Jonas Wren"), other)
    make_plant(curator, tassel)
    make_plant(curator, other)
    found = Suspicion.objects.get()
    Suspicion.objects.filter(pk=found.pk).update(in_queue=True)
    return found


@pytest.mark.parametrize("width", [PHONE, DESK])
@pytest.mark.parametrize(
    "path", ["/same/", "/same/{pk}/", "/same/{pk}/decide/?answer=different", "/same/decisions/"]
)
def test_pages_are_clean_and_fit(
    open_page: PageOpener, curator: Member, pair: Suspicion, path, width
) -> None:
    page = open_page(width=width)
    sign_in(page, curator.user)
    page.goto(path.format(pk=pair.pk))
    assert axe(page) == []
    assert not too_wide(page)


def test_a_pair_is_decided_and_undone_without_scripts(
    open_page: PageOpener, curator: Member, pair: Suspicion
) -> None:
    page = open_page(width=PHONE, scripts=False)
    sign_in(page, curator.user)
    page.goto("/same/")
    page.get_by_role("link", name="Silver Tassel").first.click()
    page.get_by_role("link", name="Same plant — keep Platycerium ‘Silver Tassel’").click()
    page.get_by_label("Why?").fill("one clump, two tags")
    page.get_by_role("button", name="Save this decision").click()
    assert Name.objects.get(epithet="Silvered Tassel").accepted.epithet == "Silver Tassel"
    page.get_by_role("link", name="Undo it").click()
    page.get_by_label("Why is it undone?").fill("the tags were swapped")
    page.get_by_role("button", name="Undo the decision").click()
    assert Name.objects.get(epithet="Silvered Tassel").accepted.epithet == "Silvered Tassel"
    assert Ruling.objects.count() == 2
