"""The shipped names say what botanists say."""

import pytest

from specimens.models import Name, Rank, TraitRecord
from specimens.services.reference_names import load_reference_names

pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("reference_names")]


def test_they_load_once() -> None:
    assert Name.objects.count() > 60
    assert load_reference_names() == 0


def test_the_alcicorne_of_old_garden_books_is_bifurcatum() -> None:
    """The trap of de Joncheere 1967, Blumea 15: 441–451: two plants under one species name."""
    accepted = Name.objects.get(epithet="alcicorne", author="Desv.").accepted
    misapplied = Name.objects.get(epithet="alcicorne", author="hort.").accepted
    assert (accepted.epithet, misapplied.epithet) == ("alcicorne", "bifurcatum")


def test_every_staghorn_has_its_traits_with_a_source() -> None:
    species = Name.objects.filter(
        rank=Rank.SPECIES, genus__epithet="Platycerium", placements__status="accepted"
    )
    assert species.count() == 18
    for name in species:
        keys = set(TraitRecord.objects.filter(name=name).values_list("state__trait__key", flat=True))
        assert keys >= {"shield_fronds", "fertile_fronds", "forks", "breadth", "spore_patches", "pups"}, name
    assert not TraitRecord.objects.filter(source="").exists()


def test_solitary_species_are_marked() -> None:
    solitary = set(Name.objects.filter(solitary=True).values_list("epithet", flat=True))
    assert solitary == {"superbum", "grande", "holttumii", "wandae"}
