"""Many at once are recorded as one at a time would be."""

from datetime import date
from typing import Any

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from frondkeep.society.models import Member
from lineage.models import LineageNode
from specimens.models import Division, Identification, Keeping, Name, ParentageClaim, Specimen, SporeSowing
from specimens.services.claims import claim_parentage
from specimens.services.many_names import NewClaim, add_names, claim_parentage_of_many
from specimens.services.many_plants import NewPlant, NewSowing, log_specimens, record_sowings
from specimens.services.names import add_name
from specimens.services.sowings import Source, record_sowing
from specimens.services.specimens import PieceOf, log_specimen
from tests.cast import make_cultivar, make_curator, make_genus, make_plant, when

ITS_OWN = {
    "id", "code", "specimen_id", "division_id", "sowing_id", "identification_id", "import_key", "claim_id", "name_id"
}  # fmt: skip
TIMES = {"logged_at", "at"}
TAKEN = when("May 2020", date(2020, 5, 1), date(2020, 5, 31))


@pytest.fixture
def imke(db: None) -> Member:
    return make_curator()


def content(row: Any) -> dict[str, Any]:
    return {
        field.attname: getattr(row, field.attname)
        for field in row._meta.concrete_fields
        if field.attname not in ITS_OWN | TIMES
    }


def told(member: Member, parent: Specimen, name: Name) -> list[dict[str, Any]]:
    """Plants of every origin, as `log_specimen` takes them."""
    pup = PieceOf(parent=parent, kind="pup", by=member)
    return [
        {"keeper": member.keeper, "came": "outside", "label_text": "x", "name": name, "acquired": TAKEN},
        {
            "keeper": member.keeper,
            "came": "piece",
            "piece_of": pup,
            "label_text": "y",
            "name": name,
            "qualifier": "cf.",
        },
        {"keeper": None, "came": "not known", "label_text": ""},
        {"keeper": member.keeper, "came": "wild", "label_text": "z", "ground": "looks"},
    ]


def test_plants_and_all_that_belongs_to_them(imke: Member) -> None:
    name = make_cultivar()
    parent = make_plant(imke, name)
    rows = told(imke, parent, name)
    singly = [log_specimen(by=imke.user, mount="cork", **row) for row in rows]
    at_once = log_specimens([NewPlant(**row, fields={"mount": "cork"}) for row in rows], by=imke.user)
    assert [content(plant) for plant in at_once] == [content(plant) for plant in singly]
    for model in (Keeping, Identification):
        kept = [
            [content(row) for row in model.objects.filter(specimen__in=them)] for them in (at_once, singly)
        ]
        assert kept[0] == kept[1] != []
    pups = Division.objects.filter(specimens__in=[at_once[1], singly[1]]).order_by("pk")
    assert content(pups[0]) == content(pups[1])
    nodes = [
        [LineageNode.objects.get(specimen=plant).clonal_steps for plant in them] for them in (singly, at_once)
    ]
    assert nodes[0] == nodes[1]


def test_each_has_a_code_of_its_own_and_a_history(imke: Member) -> None:
    made = log_specimens([NewPlant(keeper=imke.keeper, came="outside", label_text="x")] * 3, by=imke.user)
    assert len({plant.code for plant in made}) == 3
    assert all(plant.history.get().identification == plant.identification for plant in made)
    assert all(plant.history.get().history_user == imke.user for plant in made)


def test_the_number_of_queries_does_not_grow_with_the_number_of_plants(imke: Member) -> None:
    costs = []
    for count in (2, 40):
        plants = [NewPlant(keeper=imke.keeper, came="outside", label_text="x")] * count
        with CaptureQueriesContext(connection) as queries:
            log_specimens(plants, by=imke.user)
        costs.append(len(queries))
    assert costs[1] <= costs[0] + 2


def test_sowings_with_their_sources(imke: Member) -> None:
    plant = make_plant(imke, make_cultivar())
    sources = (Source(specimen=plant), Source(words="the old one"))
    singly = record_sowing(sources=sources, medium="peat", sown=TAKEN)
    (at_once,) = record_sowings(
        [NewSowing(sources=sources, fields={"medium": "peat", "sown": TAKEN})], by=None
    )
    assert content(at_once) == content(singly)
    assert [content(s) for s in at_once.sources.all()] == [content(s) for s in singly.sources.all()]
    assert SporeSowing.history.filter(id=at_once.pk).count() == 1


def test_names_are_written_out_and_accepted(imke: Member) -> None:
    genus = make_genus()
    singly = add_name(rank="cultivar", epithet="One", parent=genus, by=imke.user)
    other = Name(rank="cultivar", epithet="Two", parent=genus)
    add_names([other], by=imke.user)
    other.refresh_from_db()
    assert (other.written, other.genus, other.added_by) == ("Platycerium ‘Two’", genus, imke.user)
    assert (other.accepted == other) == (singly.accepted == singly)


def test_claims_supersede_as_one_at_a_time(imke: Member) -> None:
    name, parent = make_cultivar("One"), make_cultivar("Two")
    claim_parentage(name, says="unknown", ground="looks", by=imke.user)
    claim_parentage_of_many(
        [NewClaim(about=name, says="sport", ground="record", parents=(Source(name=parent),))], by=imke.user
    )
    assert [(claim.says, claim.standing) for claim in ParentageClaim.objects.order_by("pk")] == [
        ("unknown", "superseded"),
        ("sport", "current"),
    ]


def test_a_claim_with_too_few_parents_is_refused_and_nothing_is_written(imke: Member) -> None:
    name = make_cultivar("One")
    with pytest.raises(ValueError, match="needs 2 to 2 parents"):
        claim_parentage_of_many([NewClaim(about=name, says="cross", ground="record")], by=None)
    assert not name.claims.exists()
