"""What a plant's name says of where it came from, when no record says more."""

import pytest
from django.db import transaction

from lineage.models import LineageNode
from lineage.services.planning import plan_everything
from specimens.changes import announce
from specimens.models import Came, Placement, Rank, Reproduction
from specimens.services.claims import claim_parentage
from specimens.services.identifications import identify
from specimens.services.names import edit_name, place_name
from tests.cast import make_genus
from tests.lineage.kin import (
    made_of,
    make_cultivar,
    make_formula,
    make_name,
    make_plant,
    make_treatment,
    node,
    parent_nodes,
    parents,
    spores_of,
)

pytestmark = pytest.mark.django_db


@pytest.fixture(autouse=True)
def _nothing_left_to_write():
    yield
    assert list(plan_everything().words()) == []


def test_a_species_starts_a_line():
    andinum = make_name("andinum")
    plant = make_plant(name=andinum)
    assert (node(plant).origin, node(plant).species, node(plant).by_name) == ("founder", andinum, False)


def test_two_bought_plants_of_one_species_are_not_one_plant():
    andinum = make_name("andinum")
    one, two = make_plant(name=andinum), make_plant(name=andinum)
    assert node(one).genet != node(two).genet
    assert node(one).parentage == node(two).parentage


def test_a_cultivar_kept_by_division_makes_one_plant_of_all_who_bear_its_name():
    cultivar = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    one, two = make_plant(name=cultivar), make_plant(name=cultivar)
    assert (node(one).origin, parents(one), node(one).by_name) == ("division", [cultivar], True)
    assert node(one).genet == node(two).genet == node(cultivar)
    assert node(one).clonal_steps == 0
    assert made_of(one) == {"andinum": (1, 1)}


def test_a_sporeling_that_bears_a_clonal_name_was_raised_from_that_clone():
    cultivar = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    plant = make_plant(came=Came.SOWING, name=cultivar)
    assert (node(plant).origin, parents(plant)) == ("self", [cultivar])


@pytest.mark.parametrize("reproduction", [Reproduction.SPORES, Reproduction.NOT_KNOWN])
def test_a_strain_is_no_plant(reproduction):
    strain = make_cultivar("Green Veil", parent=make_name("andinum"), reproduction=reproduction)
    plant = make_plant(name=strain)
    assert (node(plant).origin, node(plant).species.epithet) == ("founder", "andinum")
    assert not LineageNode.objects.filter(name=strain).exists()


def test_a_strain_of_hybrid_origin_comes_of_two_plants_of_each_mention():
    andinum, ridleyi = make_name("andinum"), make_name("ridleyi")
    strain = make_cultivar(
        "Mottled", reproduction=Reproduction.SPORES, first_parent=andinum, second_parent=ridleyi
    )
    one, two = make_plant(name=strain), make_plant(name=strain)
    assert (node(one).origin, parents(one)) == ("cross", [f"specimen:{one.pk}:1", f"specimen:{one.pk}:2"])
    assert not {*parents(one)} & {*parents(two)}
    assert made_of(one) == {"andinum": (0.5, 0.5), "ridleyi": (0.5, 0.5)}


def test_a_hybrid_formula_comes_of_two_plants_and_a_clone_in_it_is_that_clone():
    clone = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    plant = make_plant(name=make_formula(clone, make_name("ridleyi")))
    assert (node(plant).origin, parents(plant)) == ("cross", [clone, f"specimen:{plant.pk}:2"])


def test_a_formula_within_a_formula_is_followed_down():
    andinum, ridleyi, wandae = (make_name(e) for e in ("andinum", "ridleyi", "wandae"))
    plant = make_plant(name=make_formula(make_formula(andinum, ridleyi), wandae))
    assert made_of(plant) == {"andinum": (0.25, 0.25), "ridleyi": (0.25, 0.25), "wandae": (0.5, 0.5)}


def test_a_hybrid_species_comes_of_two_plants_even_if_its_parents_are_not_said():
    plant = make_plant(name=make_name("mixtum", Rank.NOTHOSPECIES))
    assert (node(plant).origin, made_of(plant)) == ("cross", {None: (1, 1)})
    assert [parent.origin for parent in parent_nodes(plant)] == ["unknown", "unknown"]


def test_a_variety_counts_as_the_accepted_name_of_its_species():
    treatment = make_treatment()
    old, accepted = make_name("americanum"), make_name("andinum")
    variety = make_name("laciniatum", Rank.VARIETY, parent=old)
    plant = make_plant(name=variety)
    assert made_of(plant) == {"americanum": (1, 1)}
    place_name(name=old, treatment=treatment, status=Placement.Status.SYNONYM, accepted=accepted)
    assert made_of(plant) == {"andinum": (1, 1)}


def test_the_genus_alone_says_nothing():
    plant = make_plant(name=make_genus())
    assert (node(plant).origin, made_of(plant)) == ("unknown", {None: (1, 1)})


@pytest.mark.parametrize("qualifier", ["aff.", "?"])
def test_a_name_in_doubt_says_nothing(qualifier):
    assert node(make_plant(name=make_name("andinum"), qualifier=qualifier)).origin == "unknown"


def test_probably_counts_by_name():
    plant = make_plant(name=make_name("andinum"), qualifier="cf.")
    assert (node(plant).origin, node(plant).by_name) == ("founder", True)


def test_a_plant_with_a_tag_and_no_name_is_not_known():
    assert node(make_plant(label_text="elkhorn")).origin == "unknown"


def test_a_cultivar_is_a_piece_of_its_original_plant():
    andinum = make_name("andinum")
    original = make_plant(name=andinum)
    cultivar = make_cultivar("Silver Tassel", original_plant=original)
    bought = make_plant(name=cultivar)
    assert parents(cultivar) == [original]
    assert node(bought).genet == node(original)


def test_the_original_plant_that_bears_its_cultivar_name_is_not_its_own_piece():
    andinum = make_name("andinum")
    original = make_plant(name=andinum)
    cultivar = make_cultivar("Silver Tassel", parent=andinum, original_plant=original)
    identify(original, name=cultivar, by=None)
    assert (node(original).origin, made_of(original)) == ("founder", {"andinum": (1, 1)})
    assert not LineageNode.objects.filter(link_dropped=True).exists()


def test_a_cultivar_has_the_parents_claimed_of_it():
    one, two = make_name("andinum"), make_name("ridleyi")
    cultivar = make_cultivar("Silver Tassel")
    claim_parentage(cultivar, says="cross", parents=spores_of(one, two), ground="published")
    assert made_of(make_plant(name=cultivar)) == {"andinum": (0.5, 0.5), "ridleyi": (0.5, 0.5)}


def test_a_cultivar_of_which_nothing_is_said_is_still_one_plant():
    cultivar = make_cultivar("Silver Tassel")
    assert (node(cultivar).origin, node(make_plant(name=cultivar)).genet) == ("unknown", node(cultivar))


def test_a_name_alone_never_makes_a_plant_its_own_ancestor():
    cultivar = make_cultivar("Silver Tassel")
    plant = make_plant(name=cultivar)
    claim_parentage(cultivar, says="self", parents=spores_of(plant), ground="published")
    assert (node(plant).link_dropped, node(plant).genet) == (True, node(plant))
    assert made_of(plant) == {None: (1, 1)}


def test_a_cultivar_found_to_come_true_from_spores_is_no_longer_one_plant():
    cultivar = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    plant = make_plant(name=cultivar)
    edit_name(cultivar, version=cultivar.version, reproduction=Reproduction.SPORES)
    assert (node(plant).origin, made_of(plant)) == ("founder", {"andinum": (1, 1)})


@pytest.fixture
def decide(monkeypatch):
    """Decide that one cultivar name is a synonym of another, or that it is not after all."""

    def decided(synonym, accepted):
        joined = {} if accepted is None else {synonym.pk: accepted.pk}
        monkeypatch.setattr("lineage.services.accepted.standing_groups", lambda: joined)
        with transaction.atomic():
            announce("names", [synonym.pk])

    return decided


def test_names_decided_to_be_one_are_one_plant_and_taken_back_two_again(decide):
    tassel, tasselled = make_cultivar("Silver Tassel"), make_cultivar("Silver Tasselled")
    one, two = make_plant(name=tassel), make_plant(name=tasselled)
    decide(tasselled, tassel)
    assert node(one).genet == node(two).genet == node(tassel)
    assert not LineageNode.objects.filter(name=tasselled).exists()
    decide(tasselled, None)
    assert (node(one).genet, node(two).genet) == (node(tassel), node(tasselled))


def test_what_is_recorded_of_a_synonym_holds_for_the_plant(decide):
    tassel = make_cultivar("Silver Tassel")
    original = make_plant(name=make_name("andinum"))
    tasselled = make_cultivar("Silver Tasselled", original_plant=original)
    plant = make_plant(name=tassel)
    decide(tasselled, tassel)
    assert (parents(tassel), node(plant).genet) == ([original], node(original))
    decide(tasselled, None)
    assert parents(tassel) == []


def test_a_claim_about_a_synonym_holds_too_even_if_made_later(decide):
    tassel, tasselled = make_cultivar("Silver Tassel"), make_cultivar("Silver Tasselled")
    plant = make_plant(name=tassel)
    decide(tasselled, tassel)
    claim_parentage(tasselled, says="self", parents=spores_of(make_name("andinum")), ground="published")
    assert made_of(plant) == {"andinum": (1, 1)}
