"""The curator mends a wrong piece-of link; what would make a plant its own ancestor is refused."""

import re

import pytest

from frondkeep.society.models import Member
from specimens.models import Division, Specimen
from tests.cast import make_cultivar, make_plant, make_pup
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def mend(member: Member, plant: Specimen, parent: str, **more: object):
    form = {"version": plant.version, "came": "piece", "kind": "pup", "parent_code": parent} | more
    response = signed_in(member).post(f"/plants/{plant.code}/origin/", form)
    plant.refresh_from_db()
    return response


def test_a_wrong_parent_is_mended_and_what_stood_before_is_voided(ada: Member, curator: Member) -> None:
    wrong, right = make_plant(ada, make_cultivar()), make_plant(ada, make_cultivar())
    pup = make_pup(wrong, ada)
    former = pup.division
    assert mend(curator, pup, right.code).status_code == 302
    assert pup.division.parent == right
    assert Division.objects.get(pk=former.pk).voided_reason


def test_a_piece_that_was_none_came_from_outside(ada: Member, curator: Member) -> None:
    pup = make_pup(make_plant(ada), ada)
    assert mend(curator, pup, "", came="outside").status_code == 302
    assert (pup.came, pup.division) == ("outside", None)


def test_a_plant_cannot_come_from_its_own_piece(ada: Member, curator: Member) -> None:
    plant = make_plant(ada, make_cultivar())
    grandchild = make_pup(make_pup(plant, ada), ada)
    response = mend(curator, plant, grandchild.code)
    html = response.content.decode()
    assert response.status_code == 422
    assert "A plant cannot come from itself" in html
    assert f'value="{grandchild.code}"' in html
    assert plant.came == "outside"
    assert Division.objects.filter(parent=grandchild).count() == 0


def test_a_slip_in_the_parents_code_is_answered(ada: Member, curator: Member) -> None:
    plants = [make_plant(ada) for _ in range(12)]
    slip = plants[11].code.replace("0012", "0072")
    response = mend(curator, plants[0], slip)
    assert response.status_code == 422
    words = re.sub(r"<[^>]+>", "", response.content.decode())
    assert f"Did you mean {plants[11].code}?" in words


def test_of_two_who_mend_the_second_is_told(ada: Member, curator: Member) -> None:
    first, second = make_plant(ada), make_plant(ada)
    pup = make_pup(first, ada)
    version = pup.version
    mend(curator, pup, second.code)
    response = mend(curator, pup, first.code, version=version)
    assert response.status_code == 409
    assert pup.division.parent == second


def test_only_the_curator_mends(ada: Member) -> None:
    plant = make_plant(ada)
    assert signed_in(ada).get(f"/plants/{plant.code}/origin/").status_code == 404
    assert mend(ada, plant, "").status_code == 404
