"""After any change made through the services, what is stored is what a rebuild would give."""

from __future__ import annotations

import pytest
from django.db import connection, transaction
from django.test.utils import CaptureQueriesContext
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from lineage.services.accepted import wrongly_accepted
from lineage.services.descent import DescentError
from lineage.services.planning import plan_everything
from specimens.changes import announce, announcing_once
from specimens.models import Came, Holds, Placement, Rank, Reproduction, SporeSowing
from specimens.services.claims import PARENTS_NEEDED, claim_parentage
from specimens.services.identifications import identify
from specimens.services.names import edit_name, place_name
from specimens.services.sowings import record_cross, record_sowing
from specimens.services.specimens import edit_specimen
from tests.lineage.kin import (
    make_cultivar,
    make_formula,
    make_name,
    make_plant,
    make_pup,
    make_treatment,
    spores_of,
)

pytestmark = pytest.mark.django_db

PLACES = st.integers(0, 30)


class Collection:
    """A small collection, changed step by step; records are picked by number, round and round."""

    def __init__(self, draw, joined: dict[int, int]) -> None:
        self.draw = draw
        self.joined = joined
        self.treatment = make_treatment()
        species = [make_name(epithet) for epithet in ("andinum", "ridleyi", "wandae")]
        variety = make_name("laciniatum", Rank.VARIETY, parent=species[0])
        clones = [make_cultivar("Silver Tassel", parent=species[0]), make_cultivar("Omen")]
        clones.append(make_cultivar("Silver Tasselled", parent=species[1]))
        self.names = [*species, variety, *clones, make_formula(species[0], clones[0])]
        self.plants = [make_plant(name=species[0])]
        self.sowings: list[SporeSowing] = []

    def pick(self, things):
        return things[self.draw(PLACES) % len(things)]

    def plant_or_name(self):
        return self.pick([*self.plants, *self.names, "an old plant"])

    def buy(self) -> None:
        self.plants.append(
            make_plant(name=self.pick([None, *self.names]), qualifier=self.pick(["", "cf.", "?"]))
        )

    def take_pup(self) -> None:
        parent = self.pick(self.plants)
        self.plants.append(
            make_pup(parent, name=self.pick([None, *self.names]), sport=self.pick([True, False]))
        )

    def sow(self) -> None:
        sources = {self.plant_or_name() for _ in range(self.pick([1, 2, 3]))}
        determined = self.pick(list(SporeSowing.Determined))
        self.sowings.append(record_sowing(sources=spores_of(*sources), determined=determined))

    def sow_cross(self) -> None:
        first, second = spores_of(self.plant_or_name(), self.plant_or_name())
        cross = record_cross(first=first, second=second, how="intended")
        self.sowings.append(record_sowing(cross=cross))

    def prick_out(self) -> None:
        if self.sowings:
            sowing = self.pick(self.sowings)
            self.plants.append(make_plant(came=Came.SOWING, sowing=sowing, holds=self.pick(list(Holds))))

    def claim(self) -> None:
        says = self.pick(list(PARENTS_NEEDED))
        parents = [self.plant_or_name() for _ in range(PARENTS_NEEDED[says][0])]
        about = self.pick([*self.plants, *self.names])
        excluded = says == "mixed" and self.pick([True, False])
        claim_parentage(
            about, says=says, parents=spores_of(*parents), ground="looks", selfs_excluded=excluded
        )

    def identify(self) -> None:
        identify(self.pick(self.plants), name=self.pick(self.names), by=None, ground="dna")

    def repot(self) -> None:
        plant = self.pick(self.plants)
        plant.refresh_from_db()
        edit_specimen(plant, version=plant.version, holds=self.pick(list(Holds)))

    def learn_of_cultivar(self) -> None:
        cultivar = self.pick([name for name in self.names if name.rank == Rank.CULTIVAR])
        cultivar.refresh_from_db()
        fields = {
            "reproduction": self.pick(list(Reproduction)),
            "original_plant": self.pick([None, *self.plants]),
        }
        edit_name(cultivar, version=cultivar.version, **fields)

    def place(self) -> None:
        name, accepted = self.pick(self.names[:4]), self.pick(self.names[:4])
        if name == accepted:
            place_name(name=name, treatment=self.treatment, status=Placement.Status.ACCEPTED)
        else:
            place_name(
                name=name, treatment=self.treatment, status=Placement.Status.SYNONYM, accepted=accepted
            )

    def decide(self) -> None:
        """Join two cultivar names, or take back that one was joined."""
        one, other = (self.pick([n for n in self.names if n.rank == Rank.CULTIVAR]) for _ in range(2))
        if self.joined.pop(one.pk, None) is None and one != other:
            self.joined[one.pk] = other.pk
        announce("names", [one.pk])

    def many_at_once(self) -> None:
        with transaction.atomic(), announcing_once():
            self.buy()
            self.take_pup()
            self.sow()
            self.prick_out()


STEPS = (
    Collection.buy,
    Collection.take_pup,
    Collection.take_pup,
    Collection.sow,
    Collection.sow_cross,
    Collection.prick_out,
    Collection.claim,
    Collection.identify,
    Collection.repot,
    Collection.learn_of_cultivar,
    Collection.place,
    Collection.decide,
    Collection.many_at_once,
)


def change(collection: Collection, step) -> None:
    """One step; one that would make a plant its own ancestor is refused and leaves no trace."""
    plants, sowings = list(collection.plants), list(collection.sowings)
    joined = dict(collection.joined)
    try:
        with transaction.atomic():
            step(collection)
    except DescentError:
        collection.plants, collection.sowings = plants, sowings
        collection.joined.clear()
        collection.joined.update(joined)


def assert_nothing_to_write() -> None:
    assert list(plan_everything().words()) == []
    assert wrongly_accepted() == []


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_whatever_happens_in_whatever_order(monkeypatch, data):
    with transaction.atomic():
        joined: dict[int, int] = {}
        monkeypatch.setattr("lineage.services.accepted.standing_groups", lambda: joined)
        collection = Collection(data.draw, joined)
        for step in data.draw(st.lists(st.sampled_from(STEPS), min_size=4, max_size=14)):
            change(collection, step)
            assert_nothing_to_write()
        transaction.set_rollback(True)


def test_telling_of_a_record_that_did_not_change_writes_nothing():
    plant = make_pup(make_plant(name=make_name("andinum")))
    asked = queries_of_telling(plant)
    assert not [query for query in asked if query.startswith(("INSERT", "UPDATE", "DELETE"))]


def test_a_change_asks_the_same_number_of_queries_in_a_small_and_a_large_clone():
    first = make_plant(name=make_name("andinum"))
    make_pup(first)
    small = len(queries_of_changing(first, "ridleyi"))
    for _ in range(12):
        make_pup(first)
    assert small == len(queries_of_changing(first, "wandae"))


def queries_of_telling(plant):
    with transaction.atomic(), CaptureQueriesContext(connection) as asked:
        announce("specimens", [plant.pk])
    return [query["sql"] for query in asked.captured_queries]


def queries_of_changing(plant, species):
    name = make_name(species)
    thought = plant.identification
    thought.name = name
    thought.save()
    return queries_of_telling(plant)
