"""A plant died, left, cannot be found — and may turn up again."""

import pytest

from frondkeep.society.models import Member
from specimens.models import SeenBy, Specimen
from specimens.services.specimens import change_keeper
from tests.cast import make_plant
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db


def end(member: Member, plant: Specimen, state: str, **more: object):
    form = {"version": plant.version, "state": state, "on": "2024", "reason": "rot"} | more
    response = signed_in(member).post(f"/plants/{plant.code}/ended/", form)
    plant.refresh_from_db()
    return response


@pytest.mark.parametrize("state", ["dead", "left", "stolen", "mistake"])
def test_a_plant_that_is_no_more_is_kept_by_nobody_and_stays_on_record(ada: Member, state: str) -> None:
    plant = make_plant(ada)
    assert end(ada, plant, state).status_code == 302
    assert (plant.state, plant.ended.words, plant.state_reason, plant.keeper) == (state, "2024", "rot", None)


def test_a_plant_that_cannot_be_found_stays_its_keepers_and_may_turn_up(ada: Member) -> None:
    plant = make_plant(ada)
    end(ada, plant, "lost")
    assert plant.keeper == ada.keeper
    end(ada, plant, "growing", on="", reason="")
    assert plant.is_growing
    assert not plant.ended.is_known


def test_of_two_who_end_a_plant_the_second_is_told(ada: Member, curator: Member) -> None:
    plant = make_plant(ada)
    version = plant.version
    end(curator, plant, "lost", reason="not seen")
    response = end(ada, plant, "lost", version=version, reason="gone")
    assert response.status_code == 409
    assert "It says now: cannot be found (not seen)" in response.content.decode()
    assert 'value="gone"' in response.content.decode()


def test_the_end_of_a_plant_not_shared_is_still_its_keepers_to_read_and_undo(
    ada: Member, jonas: Member
) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    response = end(ada, plant, "dead")
    assert signed_in(ada).get(response.url).status_code == 200
    assert signed_in(jonas).get(response.url).status_code == 404
    assert end(ada, plant, "growing", on="", reason="").status_code == 302
    assert (plant.is_growing, plant.keeper) == (True, ada.keeper)


def test_who_kept_a_plant_before_the_last_keeper_has_no_say_in_it(ada: Member, jonas: Member) -> None:
    plant = make_plant(ada, seen_by=SeenBy.KEEPER)
    change_keeper(plant, keeper=jonas.keeper)
    end(jonas, plant, "dead")
    assert signed_in(ada).get(f"/plants/{plant.code}/").status_code == 404
    assert signed_in(ada).get(f"/plants/{plant.code}/ended/").status_code == 404


def test_without_an_answer_the_form_comes_back(ada: Member) -> None:
    plant = make_plant(ada)
    response = end(ada, plant, "")
    assert response.status_code == 422
    assert 'value="rot"' in response.content.decode()
