"""Names: what follows from the chain of parents, synonyms by treatment, and shipped reference names."""

import pytest
from django.db import IntegrityError, transaction

from specimens.models import Placement, Rank, Treatment
from specimens.services.edits import StaleEditError
from specimens.services.names import add_name, edit_name, follow_treatment, place_name
from tests.cast import make_cultivar, make_genus, make_species

pytestmark = pytest.mark.django_db


def test_a_cultivar_is_written_with_its_genus() -> None:
    name = make_cultivar("Silver Tassel")
    assert name.written == "Platycerium ‘Silver Tassel’"
    assert name.genus == make_genus("Platycerium")
    assert name.accepted == name


def test_a_variety_is_written_with_its_rank() -> None:
    name = add_name(
        rank=Rank.VARIETY, epithet="hillii", parent=make_species("bifurcatum"), author="(T.Moore) Domin"
    )
    assert name.written == "Platycerium bifurcatum var. hillii"


def test_a_formula_names_both_parents() -> None:
    name = add_name(
        rank=Rank.FORMULA, first_parent=make_species("andinum"), second_parent=make_species("ridleyi")
    )
    assert name.written == "Platycerium andinum × P. ridleyi"
    assert name.genus.epithet == "Platycerium"


def test_renaming_a_genus_rewrites_every_name_below() -> None:
    cultivar = make_cultivar("Silver Tassel", genus="Platycerum")
    genus = cultivar.parent
    edit_name(genus, version=genus.version, epithet="Platycerium")
    cultivar.refresh_from_db()
    assert cultivar.written == "Platycerium ‘Silver Tassel’"


def test_the_second_of_two_editors_is_told() -> None:
    name = make_cultivar()
    edit_name(name, version=1, raiser="T. Okoro")
    with pytest.raises(StaleEditError) as told:
        edit_name(name, version=1, raiser="somebody else")
    assert told.value.now.raiser == "T. Okoro"


def test_one_name_stands_once_whatever_its_capitals() -> None:
    make_cultivar("Silver Tassel")
    with pytest.raises(IntegrityError), transaction.atomic():
        add_name(rank=Rank.CULTIVAR, epithet="SILVER TASSEL", parent=make_genus())


def test_homonyms_by_two_authors_may_stand() -> None:
    make_species("alcicorne", author="Desv.")
    assert add_name(rank=Rank.SPECIES, epithet="alcicorne", parent=make_genus(), author="hort.").pk


def test_a_synonym_has_the_accepted_name_of_the_treatment_followed() -> None:
    vassei, alcicorne = make_species("vassei"), make_species("alcicorne")
    treatment = Treatment.objects.create(name="Traditional", followed=True)
    place_name(name=vassei, treatment=treatment, status=Placement.Status.SYNONYM, accepted=alcicorne)
    vassei.refresh_from_db()
    assert vassei.accepted == alcicorne


def test_following_another_treatment_changes_what_is_accepted() -> None:
    drynaria, aglaomorpha = (
        make_species("quercifolia", "Drynaria"),
        make_species("quercifolia", "Aglaomorpha"),
    )
    first = Treatment.objects.create(name="First", followed=True)
    second = Treatment.objects.create(name="Second")
    place_name(name=aglaomorpha, treatment=first, status=Placement.Status.SYNONYM, accepted=drynaria)
    place_name(name=drynaria, treatment=second, status=Placement.Status.SYNONYM, accepted=aglaomorpha)
    follow_treatment(second)
    drynaria.refresh_from_db()
    aglaomorpha.refresh_from_db()
    assert (drynaria.accepted, aglaomorpha.accepted) == (aglaomorpha, aglaomorpha)
