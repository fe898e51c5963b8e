"""Search and suggestions: forgiving, and silent about what the reader may not know."""

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import SeenBy, Treatment
from specimens.services.names import place_name
from tests.cast import make_cultivar, make_household, make_member, make_plant, make_species
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def get(member: Member, address: str, **query: object) -> str:
    response = signed_in(member).get(address, query)
    assert response.status_code == 200
    return response.content.decode()


def test_a_code_goes_straight_to_its_plant(ada: Member) -> None:
    plant = make_plant(ada)
    response = signed_in(ada).get("/search/", {"q": plant.code.replace("-", " ")})
    assert (response.status_code, response.url) == (302, f"/plants/{plant.code}/")


def test_the_code_of_a_plant_not_shown_is_like_the_code_of_none(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    hidden = get(jonas, "/search/", q=plant.code)
    none = get(jonas, "/search/", q="2026-0999-B")
    assert main_of(hidden).replace(plant.code, "") == main_of(none).replace("2026-0999-B", "")


def main_of(html: str) -> str:
    return html.partition("<main")[2].partition("</main>")[0]


def test_a_slip_finds_the_name_and_the_plants_under_it(ada: Member) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), label_text="")
    html = get(ada, "/search/", q="silvr tassle")
    assert "‘Silver Tassel’" in html
    assert plant.code in html


def test_nothing_found_says_what_to_do(ada: Member) -> None:
    assert "Type fewer letters" in get(ada, "/search/", q="qqqqq")
    assert "Nothing found" not in get(ada, "/search/")


def test_names_are_suggested_as_options_with_what_is_accepted_today(ada: Member) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    treatment = Treatment.objects.create(name="Tall Fern Flora", followed=True)
    place_name(name=old, treatment=treatment, status="synonym", accepted=new)
    html = get(ada, "/suggest/names/", q="angol")
    assert f'data-id="{old.pk}"' in html
    assert 'role="option"' in html
    assert "accepted today as" in html


def test_only_visible_growing_plants_are_suggested(ada: Member, jonas: Member) -> None:
    shown = make_plant(ada, make_cultivar("Silver Tassel"))
    hidden = make_plant(ada, make_cultivar("Silver Tassel"), seen_by=SeenBy.KEEPER)
    dead = make_plant(ada, make_cultivar("Silver Tassel"), state="dead")
    html = get(jonas, "/suggest/plants/", q="silver")
    assert shown.code in html
    assert hidden.code not in html
    assert dead.code not in html


def test_plants_of_one_keeper_are_suggested_where_the_reader_may_know_them(
    ada: Member, jonas: Member
) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    adas, shys = make_plant(ada, label_text="x"), make_plant(shy, label_text="x")
    html = get(jonas, "/suggest/plants/", q="x", keeper=ada.keeper.pk)
    assert adas.code in html
    assert shys.code not in html
    # Asked for a keeper they may not know, they learn nothing of whose plant is whose.
    assert adas.code in get(jonas, "/suggest/plants/", q="x", keeper=shy.keeper.pk)


def test_keepers_are_suggested_only_by_name(ada: Member, jonas: Member, curator: Member) -> None:
    make_member("Shy Quill", appears=Appearance.A_MEMBER)
    make_member("Private Quill", appears=Appearance.CURATOR_ONLY)
    assert get(jonas, "/suggest/keepers/", q="quill").count("<li") == 1
    assert get(curator, "/suggest/keepers/", q="quill").count("<li") == 3
    assert get(jonas, "/suggest/keepers/", q="").count("<li") == 0


def test_ones_own_household_is_suggested_by_its_name(ada: Member) -> None:
    bram = make_member("Bram Lode", appears=Appearance.A_MEMBER)
    make_household("The Lodes", bram)
    assert 'data-value="The Lodes"' in get(bram, "/suggest/keepers/", q="lodes")


@pytest.mark.parametrize("typed", ["\0", "x" * 5000, "%", "'; --", "×", "２０２６-０００９", "-", "🌿"])
def test_whatever_is_typed_gets_an_answer(ada: Member, typed: str) -> None:
    make_plant(ada, make_cultivar("Silver Tassel"))
    for address in (
        "/search/",
        "/plants/",
        "/names/",
        "/suggest/names/",
        "/suggest/plants/",
        "/suggest/keepers/",
    ):
        get(ada, address, q=typed)


def test_a_number_beyond_all_numbers_is_nobodys_key(ada: Member) -> None:
    get(ada, "/suggest/plants/", q="x", keeper="9" * 30)
    get(ada, "/plants/", keeper="9" * 30, genus="9" * 30, year="9" * 30, traits="9" * 30, page="9" * 30)
