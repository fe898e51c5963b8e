"""Pages ask the database a fixed number of questions, at one row and at forty."""

import re
from collections import Counter

import pytest
from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext

from frondkeep.society.models import Member
from specimens.changes import announcing_once
from specimens.models import Came, Specimen, TraitRecord, TraitState
from specimens.models.traits import Trait
from specimens.services.claims import claim_parentage
from specimens.services.identifications import identify
from specimens.services.sowings import Source, record_sowing
from specimens.services.specimens import change_keeper
from tests.cast import make_cultivar, make_member, make_plant, make_pup, make_species
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db
# PostgreSQL declares a cursor for what a form lets people choose from.
READING = ("SELECT", "WITH", "DECLARE")
FIRST_TABLE = re.compile(r'FROM "?(\w+)"?')

# Who is asking: their session, their roles, their member, the keepers they act for.
ASKER = Counter(django_session=1, society_user=1, society_roleheld=1, society_member=1)
AS_KEEPER = ASKER + Counter(society_keeper=1)
# A page of plants: the plants, the plants whose spores were sown, which parents are visible; sources of sowings;
# what the sown plants are thought to be; who keeps them.
PLANTS = Counter(
    specimens_specimen=3, specimens_sporesource=1, specimens_identification=1, specimens_keeping=1
)
# Their pictures: photos, traits of their names, traits of their own.
PICTURES = Counter(specimens_photo=1, specimens_traitrecord=2)
HOW_MANY = Counter(specimens_specimen=1)
# The filters offer genera, natural groups, keepers and trait states.
CHOICES = Counter(specimens_name=2, society_keeper=1, specimens_traitstate=1)
# Whether the names in memory still stand.
NAMES_IN_MEMORY = Counter(specimens_name=1)

BUDGETS = {
    "/": AS_KEEPER + HOW_MANY + PLANTS + PICTURES + Counter(shows_show=1, specimens_handover=1),
    "/mine/": AS_KEEPER + HOW_MANY + PLANTS + PICTURES,
    "/plants/": AS_KEEPER + HOW_MANY + PLANTS + PICTURES + CHOICES,
    "/plants/?as=lines&q=silver": AS_KEEPER + NAMES_IN_MEMORY + HOW_MANY + PLANTS + PICTURES + CHOICES,
    "/plants.csv": AS_KEEPER - Counter(society_member=1) + PLANTS,
    "/search/?q=silver": AS_KEEPER
    + NAMES_IN_MEMORY
    + NAMES_IN_MEMORY
    + Counter(specimens_name=1, specimens_traitrecord=1)  # the names found, and their portraits
    + HOW_MANY
    + PLANTS
    + PICTURES,
    "/suggest/plants/?q=silver": AS_KEEPER + NAMES_IN_MEMORY + PLANTS,
    "/suggest/names/?q=silver": ASKER + NAMES_IN_MEMORY + Counter(specimens_name=1),
    # How many names, a page of them, the genera to choose; their portraits.
    "/names/": ASKER + Counter(specimens_name=3, specimens_traitrecord=1),
}


def questions(member: Member, address: str) -> Counter[str]:
    """How often each table is the first asked of, on one page; the page must have been asked for before."""
    client = signed_in(member)
    client.get(address).getvalue()
    with CaptureQueriesContext(connection) as asked:
        response = client.get(address)
        response.getvalue()
    assert response.status_code == 200
    selects = [query["sql"] for query in asked if query["sql"].startswith(READING)]
    assert len(selects) == len(asked), "looking at a page writes nothing"
    return Counter(FIRST_TABLE.search(sql)[1] for sql in selects)


def a_trait() -> TraitState:
    trait = Trait.objects.get_or_create(key="shield", label="Shield fronds")[0]
    return TraitState.objects.get_or_create(trait=trait, key="ball", label="ball")[0]


def some_of_each(keeper: Member, numbers: range) -> None:
    """Plants of every origin, under names of every kind, with traits."""
    for number in numbers:
        name = make_cultivar(f"Silver {number}")
        parent = make_plant(keeper, name, label_text="silver")
        make_pup(parent, keeper)
        sowing = record_sowing(sources=(Source(specimen=parent), Source(name=name)))
        make_plant(keeper, name, came=Came.SOWING, sowing=sowing, label_text="silver")
        TraitRecord.objects.create(specimen=parent, state=a_trait())
        TraitRecord.objects.create(name=name, state=a_trait())


def a_full_life(plant: Specimen, keeper: Member, numbers: range) -> None:
    """Pieces, sowings, other names and keepers of one plant."""
    for number in numbers:
        make_pup(plant, make_member(f"Keeper {number}"))
        record_sowing(sources=(Source(specimen=plant),), by=keeper)
        identify(plant, name=make_cultivar(f"Silver {number}"), by=keeper.user, ground="looks")
        change_keeper(plant, keeper=make_member(f"Next {number}").keeper)
        TraitRecord.objects.create(specimen=make_pup(plant, keeper), state=a_trait())


def claims_and_synonyms(name, numbers: range) -> None:
    for number in numbers:
        parents = (Source(name=make_species(f"first{number}")), Source(name=make_species(f"second{number}")))
        claim_parentage(name, says="cross", parents=parents, ground="looks")


def test_every_list_asks_its_named_questions_for_one_row_and_for_forty(ada: Member) -> None:
    some_of_each(ada, range(1))
    assert {address: questions(ada, address) for address in BUDGETS} == BUDGETS
    with transaction.atomic(), announcing_once():
        some_of_each(ada, range(1, 40))
    assert {address: questions(ada, address) for address in BUDGETS} == BUDGETS


def test_a_plants_page_asks_as_much_after_a_long_life(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, make_cultivar())
    a_full_life(plant, ada, range(1))
    address = plant.get_absolute_url()
    for_one = questions(jonas, address)
    a_full_life(plant, ada, range(1, 12))
    assert questions(jonas, address) == for_one


def test_a_names_page_asks_as_much_after_many_claims(ada: Member, jonas: Member) -> None:
    name = make_cultivar("Silver 0")
    some_of_each(ada, range(1))
    claims_and_synonyms(name, range(1))
    for_one = questions(jonas, f"/names/{name.pk}/")
    claims_and_synonyms(name, range(1, 12))
    for _ in range(20):
        make_plant(ada, name)
    assert questions(jonas, f"/names/{name.pk}/") == for_one
