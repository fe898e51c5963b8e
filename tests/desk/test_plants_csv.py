"""The society's plants as a spreadsheet: what is shown, inert, and nothing that is not shown."""

import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frondkeep.desk.inert_cells import STARTS_A_FORMULA, inert, revive
from frondkeep.society.models import Appearance, Member
from specimens.models import SeenBy
from tests.cast import make_cultivar, make_member, make_plant, make_pup
from tests.desk.conftest import signed_in


def rows(member: Member, query: str = "") -> list[dict[str, str]]:
    response = signed_in(member).get(f"/plants.csv{query}")
    assert response["Content-Type"].startswith("text/csv")
    return list(csv.DictReader(io.StringIO(response.getvalue().decode("utf-8-sig"))))


@pytest.mark.django_db
def test_the_same_filters_give_the_same_plants_as_the_page(ada: Member) -> None:
    silver = make_plant(ada, make_cultivar("Silver Tassel"))
    make_plant(ada, make_cultivar("Bronze Duchess"))
    assert [row["code"] for row in rows(ada, "?q=silver")] == [silver.code]
    assert len(rows(ada)) == 2


@pytest.mark.django_db
def test_names_are_written_as_on_the_page(ada: Member) -> None:
    make_plant(ada, make_cultivar("Silver Tassel"))
    assert rows(ada)[0]["name"] == "Platycerium ‘Silver Tassel’"


@pytest.mark.django_db
def test_plants_parents_and_keepers_not_shown_are_not_in_it(ada: Member, jonas: Member) -> None:
    shy = make_member("Shy Person", appears=Appearance.A_MEMBER)
    hidden = make_plant(shy, seen_by=SeenBy.KEEPER, growing_place="attic", label_text="secret tag")
    make_pup(
        hidden, shy, seen_by=SeenBy.MEMBERS, growing_place="cellar", from_words="Mrs Fenn", label_text="pup"
    )
    text = signed_in(jonas).get("/plants.csv").getvalue().decode()
    for secret in (hidden.code, "Shy Person", "attic", "cellar", "secret tag", "Mrs Fenn"):
        assert secret not in text
    assert "pup of a plant not shown" in text
    assert rows(jonas)[0]["kept by"] == "a member"


@pytest.mark.django_db
def test_more_plants_than_a_batch_are_all_there_once(ada: Member, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("frondkeep.desk.plants_csv.A_BATCH", 2)
    plants = [make_plant(ada).code for _ in range(5)]
    assert [row["code"] for row in rows(ada)] == plants[::-1]


@pytest.mark.django_db
@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t"])  # no NUL: PostgreSQL keeps none
def test_a_cell_that_would_run_as_a_formula_is_made_inert(ada: Member, start: str) -> None:
    plant = make_plant(ada)
    plant.label_text = f"{start}HYPERLINK(1)"
    plant.save()
    assert rows(ada)[0]["what the tag says"] == f"'{start}HYPERLINK(1)"


@given(st.text(alphabet=st.sampled_from([*STARTS_A_FORMULA, "'", "a", " "]), max_size=6))
def test_an_inert_cell_starts_no_formula_and_can_be_revived(text: str) -> None:
    assert not inert(text).startswith(STARTS_A_FORMULA)
    assert revive(inert(text)) == text
