"""The sowing book and the crosses book."""

import pytest

from frondkeep.society.models import Appearance, Household, Keeper, Member
from specimens.models import Cross, Name, ParentageClaim, Specimen, SporeSowing
from tests.cast import make_cultivar
from tests.desk.importing.sheets import imported, planned, plants

pytestmark = pytest.mark.usefixtures("f1", "hillii")
SOWINGS = "Sowing no,Sown,Sown by,Spores of,Medium,What came up,Remarks"
CROSSES = "No,How,Sowing,One parent,Other parent,Egg parent,When,Noticed by,Became,How known,Formerly thought,Changed"


def sowings(*lines: str) -> str:
    return "\n".join([SOWINGS, *lines])


def crosses(*lines: str) -> str:
    return "\n".join([CROSSES, *lines])


def test_a_sowing_of_plants_names_and_words(f1: Specimen, hillii: Name) -> None:
    imported(
        sowings=sowings(
            'S1,3 May 2020,Ada Quill,"F1 (Silver Tassel), P. hillii, Ada\'s big one",peat,a few,slow'
        )
    )
    sowing = SporeSowing.objects.get()
    told = [(source.specimen, source.name, source.words) for source in sowing.sources.all()]
    assert [(plant, name) for plant, name, _ in told] == [(f1, None), (None, hillii), (None, None)]
    assert told[2][2] == "Ada's big one"
    assert (sowing.old_number, sowing.medium, sowing.came_up, sowing.notes) == ("S1", "peat", "a few", "slow")


def test_a_remark_behind_a_name_is_no_further_source(hillii: Name) -> None:
    imported(sowings=sowings('S1,2020,Ada Quill,"P. hillii, exchange packet",,,'))
    (source,) = SporeSowing.objects.get().sources.all()
    assert (source.name, source.words) == (hillii, "P. hillii, exchange packet")


def test_a_plant_named_twice_is_one_source(f1: Specimen) -> None:
    imported(sowings=sowings(f"S1,2020,Ada Quill,F1 + {f1.code},,,"))
    assert SporeSowing.objects.get().sources.count() == 1


def test_the_same_sowings_again_change_nothing() -> None:
    text = sowings("S1,2020,Ada Quill,F1,peat,,", ",2021,a friend,F1,,,x")
    imported(sowings=text)
    assert planned(sowings=text).counts() == {"on record": 2}


def test_a_cross_is_recorded_and_claimed_of_the_name_it_became(hillii: Name, tassel: Name) -> None:
    named = make_cultivar("Late Bloom")
    imported(
        crosses=crosses(
            "X1,intended,,P. 'Silver Tassel',P. hillii,P. hillii,1996,Ada Quill,P. 'Late Bloom',,,"
        )
    )
    cross = Cross.objects.get()
    assert (cross.first_name, cross.second_name, cross.egg_parent, cross.result) == (tassel, hillii, 2, named)
    claim = ParentageClaim.objects.get(name=named)
    assert [parent.part for parent in claim.parents.all()] == ["sperm", "egg"]


def test_what_was_formerly_thought_is_kept_under_what_was_found(f1: Specimen) -> None:
    imported(
        plants=plants("F2,x,,Ada Quill,,,bought,,,,", "F9,x,,Ada Quill,,,from spores,S1,,,"),
        sowings=sowings("S1,2020,Ada Quill,F1 + F2,,,"),
        crosses=crosses(
            "X1,mixed sowing,S1,F1,F2,F1,2021,Ada Quill,F9,DNA,a self of the first parent,June 2025"
        ),
    )
    child = Specimen.objects.get(society_number="F9")
    now, former = child.claims.get(standing="current"), child.claims.get(standing="superseded")
    assert (now.says, now.ground, now.made.words) == ("cross", "dna", "June 2025")
    assert (former.says, former.made.words) == ("self", "2021")
    assert [parent.specimen for parent in former.parents.all()] == [f1]


def test_the_same_crosses_again_change_nothing() -> None:
    make_cultivar("Late Bloom")
    text = crosses(
        "X1,chance,,P. 'Silver Tassel',P. hillii,,1996,Ada Quill,P. 'Late Bloom',looks,unknown,2001"
    )
    imported(crosses=text)
    plan = planned(crosses=text)
    assert plan.counts() == {"on record": 1}
    assert plan.rows[0].notes == []
    assert ParentageClaim.objects.count() == 2


def test_whoever_does_not_appear_by_name_is_not_named_in_words(ada: Member, home: Keeper) -> None:
    Household.objects.update(appears=Appearance.A_MEMBER)
    make_cultivar("Late Bloom")
    imported(
        sowings=sowings("S1,2020,Lode household,F1,,,", "S2,2020,Ada Quill,F1,,,", "S3,2020,a friend,F1,,,"),
        crosses=crosses("X1,chance,,P. 'Silver Tassel',P. hillii,,1996,Ada Quill,P. 'Late Bloom',looks,,"),
    )
    sown = SporeSowing.objects.order_by("old_number")
    assert [(sowing.by, sowing.by_words) for sowing in sown] == [
        (None, "a household"),
        (ada, ""),
        (None, "a friend"),
    ]
    claim = ParentageClaim.objects.get()
    assert (claim.by, claim.by_words) == (ada.user, "")
