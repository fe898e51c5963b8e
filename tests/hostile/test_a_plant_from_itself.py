"""A plant that would descend from itself is refused, with the codes, wherever such a record is made."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from specimens.models import Came, Identification, Specimen
from specimens.services.claims import claim_parentage
from specimens.services.sowings import Source, record_sowing
from specimens.services.specimens import edit_specimen, log_specimen
from tests.cast import make_cultivar, make_plant, make_pup, token
from tests.hostile.records import changed, records
from tests.lineage.kin import node

pytestmark = pytest.mark.django_db


def sporeling_of(plant: Specimen, world: SimpleNamespace, **fields: object) -> Specimen:
    sowing = record_sowing(sources=(Source(specimen=plant),))
    return log_specimen(
        keeper=world.people["owner"].keeper, came=Came.SOWING, sowing=sowing, by=None, **fields
    )


@pytest.fixture
def family(world: SimpleNamespace) -> SimpleNamespace:
    """A mother, her sporeling, and a cultivar whose parent on record is the sporeling."""
    world.mother = make_plant(world.people["owner"], make_cultivar("Old Mother"))
    world.child = sporeling_of(world.mother, world)
    world.named = make_cultivar("Young Thing")
    claim_parentage(
        world.named, says="self", parents=(Source(specimen=world.child),), ground=Identification.Ground.LABEL
    )
    return world


def told(page: str, *plants: Specimen) -> None:
    assert "cannot come from itself" in page
    for plant in plants:
        assert plant.code in page


def test_as_a_piece_of_ones_own_piece(family: SimpleNamespace) -> None:
    pup = make_pup(family.mother, family.people["owner"])
    before = records()
    body = {"version": family.mother.version, "came": "piece", "parent_code": pup.code}
    reply = family.clients["curator"].post(f"/plants/{family.mother.code}/origin/", body)
    assert reply.status_code == 422
    told(reply.content.decode(), family.mother, pup)
    assert f'value="{pup.code}"' in reply.content.decode()
    assert 'id="id_parent_code_error"' in reply.content.decode()
    assert not changed(before)


def test_as_a_piece_of_itself(family: SimpleNamespace) -> None:
    before = records()
    body = {"version": family.mother.version, "came": "piece", "parent_code": family.mother.code}
    reply = family.clients["curator"].post(f"/plants/{family.mother.code}/origin/", body)
    assert reply.status_code == 422
    told(reply.content.decode(), family.mother)
    assert not changed(before)


def test_a_name_that_would_make_it_its_own_grandmother_is_kept_and_the_link_by_name_left_out(
    family: SimpleNamespace,
) -> None:
    body = {
        "submission": token(),
        "name_text": "Platycerium ‘Young Thing’",
        "ground": "looks",
        "covers": "one",
    }
    url = f"/plants/{family.mother.code}/"
    assert family.clients["owner"].post(f"{url}identify/", body).status_code == 302
    assert node(family.mother).link_dropped
    for place in ("", "lineage/"):
        assert family.clients["owner"].get(url + place).status_code == 200


def test_by_a_pot_that_turns_out_to_hold_one_plant(family: SimpleNamespace) -> None:
    """Nothing breaks, whatever a changed record makes of the lineage."""
    edit_specimen(family.child, version=family.child.version, holds="several")
    body = {"version": family.child.version, "label_text": "x", "holds": "one", "seen_by": "members"}
    family.child.refresh_from_db()
    body["version"] = family.child.version
    reply = family.clients["owner"].post(f"/plants/{family.child.code}/edit/", body)
    assert reply.status_code in (302, 422)
