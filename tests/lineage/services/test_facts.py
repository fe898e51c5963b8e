"""What pages say of a plant's lineage."""

import pytest
from django.utils import timezone

from lineage.services.facts import facts_of, facts_of_name, facts_of_specimen
from specimens.models import Came, SeenBy, Specimen
from specimens.services.claims import claim_parentage
from specimens.services.sowings import record_sowing
from specimens.services.specimens import end_specimen
from tests.cast import make_curator
from tests.lineage.kin import make_cultivar, make_name, make_plant, make_pup, spores_of

pytestmark = pytest.mark.django_db


def sporeling(*sources, **fields):
    return make_plant(came=Came.SOWING, sowing=record_sowing(sources=spores_of(*sources)), **fields)


def test_made_of_names_the_largest_share_first_and_what_is_not_known_last():
    known = make_plant(name=make_name("andinum"))
    plant = make_plant()
    claim_parentage(plant, says="cross", parents=spores_of(known, "a stray"), ground="looks")
    facts = facts_of_specimen(plant)
    assert facts.composition_words == (
        "made of: Platycerium andinum: at least a half; species not known: a half"
    )
    assert [(share.low, share.high) for share in facts.shares] == [(50, 100), (50, 50)]


def test_a_mixed_sowing_is_never_half_and_half():
    plant = sporeling(make_plant(name=make_name("andinum")), make_plant(name=make_name("ridleyi")))
    facts = facts_of_specimen(plant)
    assert {share.words for share in facts.shares} == {"anything from none to all"}
    assert (facts.origin_words, facts.certainty) == ("sown together, not settled", "assumed")


def test_the_three_certainties():
    andinum = make_name("andinum")
    clone = make_cultivar("Silver Tassel")
    parent = make_plant(name=andinum)
    plants = [make_pup(parent), make_plant(name=clone), sporeling(parent), make_plant()]
    assert [facts_of_specimen(plant).certainty for plant in plants] == [
        "recorded",
        "assumed",
        "assumed",
        "unknown",
    ]


def test_divisions_are_not_counted_through_a_name():
    original = make_plant(name=make_name("andinum"))
    clone = make_cultivar("Silver Tassel", original_plant=original)
    bought, pup = make_plant(name=clone), make_pup(original)
    facts = facts_of([make_pup(bought), pup])
    assert sorted(fact.steps_counted for fact in facts.values()) == [False, True]
    assert facts[pup.pk].division_words == "1 division since the first plant"


def test_pieces_count_every_plant_of_the_clone_that_was_not_entered_by_mistake():
    first = make_plant(name=make_name("andinum"))
    pup = make_pup(first)
    mistaken = make_pup(first)
    end_specimen(mistaken, version=mistaken.version, state="mistake")
    assert facts_of_specimen(pup).pieces == 2


def test_what_was_thought_before_is_told_with_the_year():
    andinum, ridleyi = make_name("andinum"), make_name("ridleyi")
    plant = make_plant()
    pup = make_pup(plant)
    claim_parentage(plant, says="cross", parents=spores_of(andinum, ridleyi), ground="label")
    claim_parentage(plant, says="self", parents=spores_of(andinum), ground="dna")
    told = f"until {timezone.localdate().year} thought to be Platycerium andinum × Platycerium ridleyi"
    assert facts_of_specimen(plant).formerly == facts_of_specimen(pup).formerly == (told,)


def test_a_plant_not_shared_is_named_in_what_was_thought_to_the_curator_alone():
    secret = make_plant(name=make_name("andinum"), seen_by=SeenBy.KEEPER)
    plant = make_plant()
    claim_parentage(plant, says="self", parents=spores_of(secret), ground="label")
    claim_parentage(plant, says="unknown", ground="dna")
    assert facts_of_specimen(plant).formerly[0].endswith("from spores of a plant not shown")
    curator = make_curator().user
    assert facts_of_specimen(plant, reader=curator).formerly[0].endswith(f"from spores of {secret.code}")


def test_a_strain_has_no_lineage_and_a_clone_has():
    strain = make_cultivar("Green Veil", reproduction="spores")
    clone = make_cultivar("Silver Tassel", parent=make_name("andinum"))
    assert facts_of_name(strain) is None
    assert facts_of_name(clone).composition_words == "made of: Platycerium andinum: all"


def test_a_list_asks_the_same_number_of_queries_whatever_its_length(django_assert_max_num_queries):
    parent = make_plant(name=make_name("andinum"))
    for _ in range(6):
        claim_parentage(sporeling(parent), says="unknown", ground="looks")
    for plants in (Specimen.objects.all()[:1], Specimen.objects.all()):
        listed = list(plants)
        with django_assert_max_num_queries(8):
            # nodes, shares, species (with them), pieces, joined by name, former claims, their parents, shown
            assert len(facts_of(listed)) == len(listed)
