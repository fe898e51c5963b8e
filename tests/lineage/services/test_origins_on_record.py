"""What the records say of where a plant came from: its division, the claim about it, its sowing."""

import pytest

from lineage.services.planning import plan_everything
from specimens.models import Came, Holds, SporeSowing
from specimens.services.claims import claim_parentage
from specimens.services.sowings import record_cross, record_sowing
from tests.lineage.kin import (
    made_of,
    make_cultivar,
    make_name,
    make_plant,
    make_pup,
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


def sporeling(*sources, determined=SporeSowing.Determined.AS_SOWN, **fields):
    sowing = record_sowing(sources=spores_of(*sources), determined=determined)
    return make_plant(came=Came.SOWING, sowing=sowing, **fields)


def test_a_pup_is_a_piece_of_its_parent():
    parent = make_plant(name=make_name("andinum"))
    pup = make_pup(parent)
    assert (node(pup).origin, parents(pup)) == ("division", [parent])
    assert (node(pup).genet, node(pup).clonal_steps) == (node(parent), 1)


def test_five_divisions_down_it_is_still_one_plant():
    plant = first = make_plant(name=make_name("andinum"))
    for _ in range(5):
        plant = make_pup(plant)
    assert (node(plant).genet, node(plant).clonal_steps) == (node(first), 5)
    assert made_of(plant) == {"andinum": (1, 1)}


def test_a_division_goes_before_what_the_plant_is_thought_to_be():
    pup = make_pup(make_plant(name=make_name("andinum")), name=make_name("ridleyi"))
    assert made_of(pup) == {"andinum": (1, 1)}


def test_a_sport_starts_a_line_of_its_own_within_the_plant():
    parent = make_plant(name=make_name("andinum"))
    sport = make_pup(parent, sport=True)
    piece = make_pup(sport)
    assert (node(piece).genet, node(piece).clone_line) == (node(parent), node(sport))
    assert node(piece).clonal_steps == 2


def test_a_piece_of_a_plant_not_on_record_is_what_it_is_thought_to_be():
    pup = make_pup(None, words="the big one at the botanic garden", name=make_name("andinum"))
    assert (node(pup).origin, made_of(pup)) == ("founder", {"andinum": (1, 1)})


def test_a_piece_of_a_pot_of_several_has_the_origin_and_parents_of_the_pot():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    pot = sporeling(one, two, holds=Holds.SEVERAL)
    piece = make_pup(pot)
    assert (node(piece).origin, parents(piece)) == ("mixed", [one, two])
    assert node(piece).genet == node(piece)
    assert node(piece).parentage == node(pot).parentage


def test_a_piece_of_a_piece_of_a_pot_of_several_too():
    one = make_plant(name=make_name("andinum"))
    pot = sporeling(one, holds=Holds.SEVERAL)
    smaller_pot = make_pup(pot, holds=Holds.SEVERAL)
    assert parents(make_pup(smaller_pot)) == [one]


def test_a_claim_about_a_piece_of_a_pot_of_several_is_about_that_piece_alone():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    pot = sporeling(one, two, holds=Holds.SEVERAL)
    piece = make_pup(pot)
    claim_parentage(piece, says="cross", parents=spores_of(one, two), ground="dna")
    assert (node(piece).origin, node(pot).origin) == ("cross", "mixed")


def test_a_claim_goes_before_the_sowing():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    plant = sporeling(one)
    claim_parentage(plant, says="cross", parents=spores_of(one, two), ground="looks")
    assert (node(plant).origin, parents(plant)) == ("cross", [one, two])


@pytest.mark.parametrize(
    ("says", "count", "origin"),
    [
        ("cross", 2, "cross"),
        ("self", 1, "self"),
        ("mixed", 2, "mixed"),
        ("piece", 1, "division"),
        ("sport", 1, "division"),
        ("apogamous", 1, "apogamous"),
        ("unknown", 0, "unknown"),
    ],
)
def test_each_claim_has_its_origin(says, count, origin):
    candidates = [make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))][:count]
    plant = make_plant(name=make_name("wandae"))
    claim_parentage(plant, says=says, parents=spores_of(*candidates), ground="record")
    assert (node(plant).origin, parents(plant)) == (origin, candidates)
    assert node(plant).sport == (says == "sport")


def test_a_claim_says_how_a_plant_selfed():
    parent = make_plant(name=make_name("andinum"))
    plant = make_plant()
    claim_parentage(plant, says="self", parents=spores_of(parent), ground="record", selfing="intra")
    assert (node(plant).parentage.f_lo, node(plant).parentage.f_hi) == (1, 1)


def test_a_claim_about_a_piece_is_kept_on_the_first_plant():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    first = make_plant()
    piece = make_pup(make_pup(first))
    claim_parentage(piece, says="cross", parents=spores_of(one, two), ground="dna")
    assert (node(piece).origin, node(first).origin) == ("division", "cross")
    assert made_of(piece) == {"andinum": (0.5, 0.5), "ridleyi": (0.5, 0.5)}


def test_a_claim_about_a_piece_of_a_sport_stays_below_the_sport():
    first = make_plant(name=make_name("andinum"))
    sport = make_pup(first, sport=True)
    piece = make_pup(sport)
    claim_parentage(piece, says="unknown", ground="looks")
    assert (node(first).origin, node(sport).origin) == ("founder", "division")


def test_a_claim_that_a_piece_is_a_sport_makes_it_one():
    first = make_plant(name=make_name("andinum"))
    piece = make_pup(first)
    claim_parentage(piece, says="sport", parents=spores_of(first), ground="looks")
    assert (node(piece).sport, node(first).origin) == (True, "founder")


def test_dna_revises_what_was_thought():
    one, two, three = (make_plant(name=make_name(e)) for e in ("andinum", "ridleyi", "wandae"))
    plant = make_plant()
    claim_parentage(plant, says="cross", parents=spores_of(one, two), ground="record")
    claim_parentage(plant, says="cross", parents=spores_of(one, three), ground="dna")
    assert made_of(plant) == {"andinum": (0.5, 0.5), "wandae": (0.5, 0.5)}


def test_spores_of_one_plant_stand_as_sown():
    parent = make_plant(name=make_name("andinum"))
    plant = sporeling(parent)
    assert (node(plant).origin, parents(plant), node(plant).as_sown) == ("self", [parent], True)


def test_spores_of_several_plants_are_not_settled():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    plant = sporeling(one, two)
    assert (node(plant).origin, parents(plant)) == ("mixed", [one, two])
    assert made_of(plant) == {"andinum": (0, 1), "ridleyi": (0, 1)}


@pytest.mark.parametrize(
    ("how_many", "origin", "excluded"), [(1, "cross", False), (2, "cross", False), (3, "mixed", True)]
)
def test_found_to_be_hybrids_they_are_crosses_or_not_selfs(how_many, origin, excluded):
    plants = [make_plant(name=make_name(e)) for e in ("andinum", "ridleyi", "wandae")[:how_many]]
    plant = sporeling(*plants, determined=SporeSowing.Determined.HYBRID)
    assert (node(plant).origin, node(plant).selfs_excluded, node(plant).as_sown) == (origin, excluded, False)
    assert parents(plant) == ([*plants, None] if how_many == 1 else plants)


def test_same_as_its_parent_though_from_spores_it_is_a_piece():
    parent = make_plant(name=make_name("andinum"))
    plant = sporeling(parent, determined=SporeSowing.Determined.APOGAMOUS)
    assert (node(plant).origin, node(plant).genet, node(plant).clonal_steps) == (
        "apogamous",
        node(parent),
        1,
    )


def test_sibs_of_one_sowing_share_the_plant_its_packet_merely_names():
    sowing = record_sowing(sources=spores_of(make_name("andinum")))
    sibs = [make_plant(came=Came.SOWING, sowing=sowing) for _ in range(2)]
    (parent,), (same,) = parent_nodes(sibs[0]), parent_nodes(sibs[1])
    assert parent == same
    assert (parent.mention, parent.species.epithet) == (f"source:{sowing.sources.get().pk}", "andinum")


def test_a_packet_that_names_a_cultivar_kept_by_division_names_that_plant():
    cultivar = make_cultivar("Silver Tassel")
    assert parents(sporeling(cultivar)) == [cultivar]


def test_spores_of_a_plant_not_on_record_have_a_parent_not_known():
    plant = sporeling("Mrs Brackenbury’s old plant")
    assert (node(plant).origin, parents(plant), made_of(plant)) == ("self", [None], {None: (1, 1)})


def test_a_cross_alone_leaves_its_sowing_unsettled():
    one, two = make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi"))
    cross = record_cross(first=spores_of(one)[0], second=spores_of(two)[0], how="intended")
    plant = make_plant(came=Came.SOWING, sowing=record_sowing(cross=cross))
    assert (node(plant).origin, parents(plant)) == ("mixed", [one, two])


def test_species_by_the_same_species_is_a_cross_and_no_self():
    andinum = make_name("andinum")
    plant = make_plant()
    claim_parentage(plant, says="cross", parents=spores_of(andinum, andinum), ground="label")
    first, second = parent_nodes(plant)
    assert first != second
    assert (node(plant).parentage.f_lo, node(plant).parentage.f_hi) == (0, 0)
