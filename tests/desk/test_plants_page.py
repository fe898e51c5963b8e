"""The society's plants: what the list shows, and how filters narrow it."""

from datetime import date

import pytest

from frondkeep.society.models import Appearance, Member
from specimens.models import Came, SeenBy, Trait, TraitRecord, TraitState, Treatment
from specimens.services.names import place_name
from tests.cast import make_cultivar, make_member, make_plant, make_pup, make_species, when
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def codes(member: Member, query: str = "") -> list[str]:
    response = signed_in(member).get(f"/plants/{query}")
    assert response.status_code == 200
    return [row.plant.code for row in response.context["listed"]]


def test_a_member_sees_the_shared_plants_of_others_newest_first(ada: Member, jonas: Member) -> None:
    first, second = make_plant(ada, make_cultivar()), make_plant(jonas)
    assert codes(jonas) == [second.code, first.code]


def test_a_plant_not_shared_is_in_no_list_and_no_count_of_others(ada: Member, jonas: Member) -> None:
    make_plant(ada, make_cultivar(), seen_by=SeenBy.KEEPER)
    response = signed_in(jonas).get("/plants/?q=Silver")
    assert response.context["count"] == 0
    assert "Silver Tassel" not in response.content.decode().replace('value="Silver"', "")


def test_the_keeper_and_the_curator_see_a_plant_not_shared(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    assert codes(ada) == codes(curator) == [plant.code]


def test_only_growing_plants_are_listed_unless_another_state_is_asked_for(ada: Member) -> None:
    growing = make_plant(ada)
    dead = make_plant(ada, state="dead")
    assert codes(ada) == [growing.code]
    assert codes(ada, "?state=dead") == [dead.code]
    assert set(codes(ada, "?state=any")) == {growing.code, dead.code}


@pytest.mark.parametrize("typed", ["silver tassel", "Silv", "tassel", "silvr tasel", "platy silver"])
def test_a_name_is_found_by_its_beginnings_and_with_slips(ada: Member, typed: str) -> None:
    plant = make_plant(ada, make_cultivar("Silver Tassel"), label_text="")
    make_plant(ada, make_cultivar("Bronze Duchess"), label_text="")
    assert codes(ada, f"?q={typed}") == [plant.code]


@pytest.mark.parametrize("spelling", ["{code}", "{bare}", "{spaced}", "{lower}"])
def test_a_code_is_found_with_and_without_its_letter(ada: Member, spelling: str) -> None:
    plant = make_plant(ada)
    make_plant(ada)
    bare = plant.code[:-2]
    typed = spelling.format(
        code=plant.code, bare=bare, spaced=bare.replace("-", " "), lower=plant.code.lower()
    )
    assert codes(ada, f"?q={typed}") == [plant.code]


def test_a_slip_in_a_code_is_answered_with_the_code_meant(ada: Member) -> None:
    plants = [make_plant(ada) for _ in range(12)]
    meant = plants[11].code
    slip = meant.replace("0012", "0072")
    response = signed_in(ada).get("/plants/", {"q": slip})
    assert response.context["did_you_mean"] == [meant]


def test_did_you_mean_never_tells_of_a_plant_not_shown(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    response = signed_in(jonas).get("/plants/", {"q": plant.code.replace("0001", "0007")})
    assert response.context["did_you_mean"] == []


def test_old_numbers_and_words_of_the_tag_find_a_plant(ada: Member) -> None:
    plant = make_plant(ada, society_number="S77", label_text="ex Mrs B, big one")
    assert codes(ada, "?q=s77") == codes(ada, "?q=mrs big") == [plant.code]


def test_the_keepers_own_number_finds_it_for_them_alone(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, own_number="shed-9")
    assert codes(ada, "?q=shed-9") == [plant.code]
    assert codes(jonas, "?q=shed-9") == []


def test_keepers_who_appear_by_name_can_be_chosen_others_cannot(ada: Member, jonas: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    make_plant(shy)
    plant = make_plant(ada)
    assert codes(jonas, f"?keeper={ada.keeper.pk}") == [plant.code]
    response = signed_in(jonas).get(f"/plants/?keeper={shy.keeper.pk}")
    assert "keeper" in response.context["filters"].form.errors
    assert "Shy Person" not in response.content.decode()


def test_the_curator_may_choose_every_keeper(ada: Member, curator: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.CURATOR_ONLY)
    plant = make_plant(shy)
    make_plant(ada)
    assert codes(curator, f"?keeper={shy.keeper.pk}") == [plant.code]


def test_plants_are_narrowed_by_genus_group_way_of_coming_and_year(ada: Member) -> None:
    staghorn = make_plant(
        ada,
        make_species("ridleyi", natural_group="Malayan-Asiatic"),
        acquired=when("1998", date(1998, 1, 1), date(1998, 12, 31)),
    )
    pup = make_pup(staghorn, ada, acquired=when("2020", date(2020, 1, 1), date(2020, 12, 31)))
    fern = make_plant(ada, make_species("raddianum", "Adiantum"), came=Came.WILD)
    genus = staghorn.identification.name.genus_id
    assert set(codes(ada, f"?genus={genus}")) == {staghorn.code, pup.code}
    assert set(codes(ada, "?natural_group=Malayan-Asiatic")) == {staghorn.code, pup.code}
    assert codes(ada, "?came=wild") == [fern.code]
    assert codes(ada, "?year=1998") == [staghorn.code]


def test_each_order_gives_every_plant(ada: Member) -> None:
    plants = {make_plant(ada, make_cultivar()).code, make_plant(ada).code}
    for sort in ("new", "name", "code", "old"):
        assert set(codes(ada, f"?sort={sort}")) == plants


def test_lines_and_portraits_show_the_same_plants(ada: Member) -> None:
    make_plant(ada, make_cultivar())
    assert codes(ada, "?as=lines") == codes(ada)


def test_a_filter_that_cannot_be_read_is_said_and_the_rest_shown(ada: Member) -> None:
    plant = make_plant(ada)
    response = signed_in(ada).get("/plants/?year=long+ago")
    assert [row.plant for row in response.context["listed"]] == [plant]
    assert "One filter could not be used" in response.content.decode()


def test_a_filter_that_is_on_can_be_taken_off(ada: Member) -> None:
    make_plant(ada)
    response = signed_in(ada).get("/plants/?q=x&came=wild&page=1")
    assert [each.address_without for each in response.context["filters_now"]] == ["?came=wild", "?q=x"]


def test_traits_narrow_by_plant_or_name_any_of_one_trait_and_each_trait(ada: Member) -> None:
    shield, fronds = (Trait.objects.create(key=key, label=key) for key in ("shield", "fronds"))
    ball, basket = (TraitState.objects.create(trait=shield, key=key, label=key) for key in ("ball", "basket"))
    erect = TraitState.objects.create(trait=fronds, key="erect", label="erect")
    by_name = make_plant(ada, make_cultivar("Silver Tassel"))
    by_sight = make_plant(ada, make_cultivar("Bronze Duchess"))
    TraitRecord.objects.create(name=by_name.identification.name, state=ball)
    TraitRecord.objects.create(specimen=by_sight, state=basket)
    TraitRecord.objects.create(specimen=by_sight, state=erect)
    assert codes(ada, f"?traits={ball.pk}") == [by_name.code]
    assert set(codes(ada, f"?traits={ball.pk}&traits={basket.pk}")) == {by_name.code, by_sight.code}
    assert codes(ada, f"?traits={ball.pk}&traits={basket.pk}&traits={erect.pk}") == [by_sight.code]


def test_a_plant_is_found_under_every_name_accepted_as_its_own(ada: Member) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    treatment = Treatment.objects.create(name="Tall Fern Flora", followed=True)
    place_name(name=old, treatment=treatment, status="synonym", accepted=new)
    plant = make_plant(ada, new, label_text="")
    assert codes(ada, "?q=angolense") == [plant.code]


def test_a_number_of_any_year_finds_its_plant(ada: Member) -> None:
    plants = [make_plant(ada) for _ in range(2)]
    number = plants[1].code.split("-")[1].lstrip("0")
    assert codes(ada, f"?q={number}") == [plants[1].code]
