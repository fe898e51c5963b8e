"""The list of names, each name's page, and the curator's changes."""

from datetime import date

import pytest

from frondkeep.society.models import Member
from specimens.models import Name, SeenBy, Treatment
from specimens.services.claims import claim_parentage
from specimens.services.edits import StaleEditError
from specimens.services.names import place_name
from specimens.services.sowings import Source
from tests.cast import make_cultivar, make_member, make_plant, make_species, when
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def page(member: Member, name: Name) -> str:
    response = signed_in(member).get(f"/names/{name.pk}/")
    assert response.status_code == 200
    return response.content.decode()


def listed(member: Member, query: str) -> list[str]:
    response = signed_in(member).get(f"/names/{query}")
    return [name.epithet for name in response.context["page_obj"]]


def answers(name: Name, **more: object) -> dict[str, object]:
    return {"version": name.version, "epithet": name.epithet, "reproduction": name.reproduction} | more


def test_names_are_found_forgivingly_and_narrowed(ada: Member) -> None:
    make_cultivar("Silver Tassel")
    make_cultivar("Bronze Duchess", checked=False)
    make_species("raddianum", "Adiantum")
    genus = Name.objects.get(epithet="Adiantum")
    assert listed(ada, "?q=silvr+tassle") == ["Silver Tassel"]
    assert listed(ada, "?unchecked=on") == ["Bronze Duchess"]
    assert listed(ada, f"?genus={genus.pk}&kind=species") == ["raddianum"]
    assert listed(ada, "?kind=genera") == ["Adiantum", "Platycerium"]


def test_a_voided_name_is_nowhere(ada: Member) -> None:
    name = make_cultivar("Silver Tassel")
    name.voided_reason = "a slip"
    name.save()
    assert listed(ada, "?q=silver") == []
    assert signed_in(ada).get(f"/names/{name.pk}/").status_code == 404


def test_plants_under_a_name_are_those_under_its_synonyms_too_and_only_visible_ones(
    ada: Member, jonas: Member
) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    treatment = Treatment.objects.create(name="Tall Fern Flora", followed=True)
    place_name(name=old, treatment=treatment, status="synonym", accepted=new)
    under_old, under_new = make_plant(ada, old), make_plant(ada, new)
    hidden = make_plant(ada, old, seen_by=SeenBy.KEEPER)
    html = page(jonas, new)
    assert under_old.code in html
    assert under_new.code in html
    assert hidden.code not in html
    assert "2 plants you may see grow under it" in html
    assert "Also known as" in html


def test_a_synonym_says_of_what_and_by_whose_account(ada: Member) -> None:
    old, new = make_species("angolense"), make_species("elephantotis")
    treatment = Treatment.objects.create(name="Tall Fern Flora", followed=True)
    place_name(name=old, treatment=treatment, status="synonym", accepted=new)
    html = page(ada, old)
    assert "A synonym of" in html
    assert "the society follows Tall Fern Flora" in html


def test_parents_thought_now_and_formerly_stand_there_with_their_grounds(ada: Member) -> None:
    name = make_cultivar("Silver Tassel")
    veitchii, hillii, ridleyi = (make_species(each) for each in ("veitchii", "hillii", "ridleyi"))
    claim_parentage(name, says="cross", parents=(Source(name=veitchii), Source(name=ridleyi)), ground="looks")
    claim_parentage(
        name, says="cross", parents=(Source(name=veitchii), Source(name=hillii)), ground="published"
    )
    html = page(ada, name)
    assert (
        html.index("Thought now")
        < html.index("hillii")
        < html.index("Formerly thought")
        < html.index("ridleyi")
    )
    assert "Published" in html


def test_a_parent_plant_not_shared_is_a_plant_not_shown(ada: Member, jonas: Member) -> None:
    name = make_cultivar("Silver Tassel")
    hidden = make_plant(ada, make_species("veitchii"), seen_by=SeenBy.KEEPER)
    claim_parentage(name, says="self", parents=(Source(specimen=hidden),), ground="record")
    assert "a plant not shown" in page(jonas, name)
    assert hidden.code not in page(jonas, name)
    assert hidden.code in page(ada, name)


def test_only_the_curator_may_change_a_name(ada: Member, curator: Member) -> None:
    name = make_cultivar("Silver Tassel", checked=False)
    for address in (f"/names/{name.pk}/edit/", f"/names/{name.pk}/checked/"):
        assert signed_in(ada).post(address).status_code == 404
    assert signed_in(ada).get(f"/names/{name.pk}/edit/").status_code == 404
    signed_in(curator).post(f"/names/{name.pk}/checked/")
    name.refresh_from_db()
    assert name.checked


def test_a_changed_name_is_written_so_everywhere_and_without_its_quotes(curator: Member) -> None:
    name = make_cultivar("Silver Tassle")
    form = answers(name, epithet="‘Silver Tassel’", raiser="T. Okoro", introduced="1998", checked="on")
    assert signed_in(curator).post(f"/names/{name.pk}/edit/", form).status_code == 302
    name = Name.objects.get(pk=name.pk)
    assert (name.epithet, name.written) == ("Silver Tassel", "Platycerium ‘Silver Tassel’")
    assert name.introduced == when("1998", date(1998, 1, 1), date(1998, 12, 31))


def test_a_name_that_is_on_record_already_is_refused_at_its_field(curator: Member) -> None:
    make_cultivar("Silver Tassel")
    name = make_cultivar("Silvered Tassel")
    response = signed_in(curator).post(f"/names/{name.pk}/edit/", answers(name, epithet="Silver Tassel"))
    assert response.status_code == 422
    assert "on record already" in response.content.decode()


def test_the_second_of_two_curators_sees_both_versions(curator: Member) -> None:
    name = make_cultivar("Silver Tassel")
    stale = answers(name, raiser="mine")
    signed_in(curator).post(f"/names/{name.pk}/edit/", answers(name, raiser="theirs"))
    response = signed_in(curator).post(f"/names/{name.pk}/edit/", stale)
    assert response.status_code == 409
    assert "<td>theirs</td><td>mine</td>" in response.content.decode()


def test_a_name_changed_meanwhile_is_not_marked_as_checked(curator: Member, monkeypatch) -> None:
    name = make_cultivar("Silver Tassel", checked=False)

    def too_late(*args: object, **kwargs: object) -> None:
        raise StaleEditError(name)

    monkeypatch.setattr("frondkeep.desk.views.names.edit_name", too_late)
    response = signed_in(curator).post(f"/names/{name.pk}/checked/", follow=True)
    assert "Somebody changed this name a moment ago" in response.content.decode()


def test_every_kind_of_name_has_its_page_and_its_form(ada: Member, curator: Member) -> None:
    veitchii, hillii = make_species("veitchii", home="Queensland", solitary=True), make_species("hillii")
    formula = Name.objects.get(pk=add_formula(veitchii, hillii).pk)
    for name in (veitchii.parent, veitchii, make_cultivar(), formula):
        page(ada, name)
        assert signed_in(curator).get(f"/names/{name.pk}/edit/").status_code == 200


def add_formula(first: Name, second: Name) -> Name:
    from specimens.services.names import add_name

    return add_name(rank="formula", first_parent=first, second_parent=second)


def test_a_claim_in_a_members_name_does_not_name_them_against_their_wish(
    ada: Member, curator: Member
) -> None:
    make_member("Shy Person", appears="member")
    name = make_cultivar("Silver Tassel")
    claim_parentage(name, says="unknown", ground="record", by_words="Shy Person")
    assert "Shy Person" not in page(ada, name)
    assert "Shy Person" in page(curator, name)
