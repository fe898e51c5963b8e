"""A plants' list becomes plants: how each came, what it is thought to be, who has it."""

import pytest

from frondkeep.society.models import Keeper, Member
from specimens.models import Came, Keeping, Name, ParentageClaim, Reproduction, SeenBy, Specimen, State
from tests.cast import make_cultivar, make_plant, make_species
from tests.desk.importing.sheets import imported, planned, plants

pytestmark = pytest.mark.usefixtures("ada", "jonas", "tassel", "hillii")


def one(number: str) -> Specimen:
    return Specimen.objects.get(society_number=number)


def test_a_bought_plant_keeps_its_tag_letter_for_letter_and_its_source(ada: Member) -> None:
    imported(
        plants=plants(
            "F2,P.  'Silver Tasel',P. 'Silver Tassel',Ada Quill,Greenlatch,spring 2001,bought,,,,slow"
        )
    )
    plant = one("F2")
    assert plant.label_text == "P.  'Silver Tasel'"
    assert (plant.came, plant.from_words, plant.acquired.words) == (
        Came.OUTSIDE,
        "Greenlatch (bought)",
        "spring 2001",
    )
    assert (plant.keeper, plant.notes) == (ada.keeper, "slow")
    assert plant.identification is not None
    assert str(plant.identification.name) == "Platycerium ‘Silver Tassel’"


def test_a_belief_the_tag_bears_out_is_from_the_tag_another_by_looks() -> None:
    imported(
        plants=plants(
            "F2,Silvr Tassel,P. 'Silver Tassel',Ada Quill,,,bought,,,,",
            "F3,big one,P. hillii,Ada Quill,,,bought,,,,",
        )
    )
    assert [one(n).identification.ground for n in ("F2", "F3")] == ["label", "looks"]


@pytest.mark.parametrize(
    ("thought", "qualifier"),
    [
        ("P. cf. hillii", "cf."),
        ("P. aff. hillii", "aff."),
        ("P. hillii ?", "?"),
        ("? P. hillii", "?"),
        ("P. hillii", ""),
    ],
)
def test_doubt_is_kept_apart_from_the_name(thought: str, qualifier: str, hillii: Name) -> None:
    imported(plants=plants(f"F2,x,{thought},Ada Quill,,,bought,,,,"))
    thought_now = one("F2").identification
    assert thought_now is not None
    assert (thought_now.name, thought_now.qualifier) == (hillii, qualifier)


@pytest.mark.parametrize("tag", ["no tag", "tag gone", "N.N.", "", "?"])
def test_a_tag_that_says_nothing_names_nothing(tag: str) -> None:
    imported(plants=plants(f"F2,{tag},,Ada Quill,,,bought,,,,"))
    thought = one("F2").identification
    assert thought is None or thought.name is None


def test_a_belief_of_unknown_outweighs_the_tag() -> None:
    imported(plants=plants("F2,P. 'Silver Tassel',unknown,Ada Quill,,,bought,,,,"))
    assert one("F2").identification.name is None


def test_a_new_name_is_kept_as_not_yet_checked_and_said_beforehand() -> None:
    text = plants("F2,P. 'Never Heard Of',,Ada Quill,,,bought,,,,")
    assert "kept as a name not yet checked" in planned(plants=text).rows[0].notes[0]
    imported(plants=text)
    assert one("F2").identification.name.checked is False


def test_a_doubtful_hybrid_is_named_by_its_formula() -> None:
    make_species("veitchii")
    imported(plants=plants("F2,x,P. veitchii × P. hillii ?,Ada Quill,,,bought,,,,"))
    thought = one("F2").identification
    assert (str(thought.name), thought.qualifier) == ("Platycerium hillii × P. veitchii", "?")


def test_a_piece_of_a_recorded_plant_is_its_division_and_bears_its_name(f1: Specimen, tassel: Name) -> None:
    imported(plants=plants("F2,no tag,,Jonas Wren-Pike,Ada Quill,2020,pup,F1,,,"))
    piece = one("F2")
    assert (piece.came, piece.division.parent, piece.division.kind) == (Came.PIECE, f1, "pup")
    assert piece.identification.name == tassel
    assert piece.from_keeper == f1.keeper


def test_parents_and_pieces_may_stand_in_any_order() -> None:
    imported(
        plants=plants(
            "F4,x,,Ada Quill,,,pup,F3,,,", "F3,x,,Ada Quill,,,pup,F2,,,", "F2,x,,Ada Quill,,,bought,,,,"
        )
    )
    assert one("F4").division.parent == one("F3")
    assert one("F3").division.parent == one("F2")


def test_ones_own_sport_is_a_division_that_came_out_different(f1: Specimen, ada: Member) -> None:
    make_cultivar("Torn Tassel", raiser="Ada Quill")
    imported(plants=plants("F2,x,P. 'Torn Tassel',Ada Quill,own,2020,sport,F1,,,"))
    sport = one("F2")
    assert (sport.division.sport, sport.division.by) == (True, ada)
    assert Name.objects.get(epithet="Torn Tassel").original_plant == sport


def test_a_sporeling_joins_the_sowing_of_its_number() -> None:
    imported(
        plants=plants("F2,S1 no. 2,,Ada Quill,own,2021,from spores,S1,several,,"),
        sowings="Sowing no,Sown,Spores of\nS1,2020,P. hillii",
    )
    plant = one("F2")
    assert (plant.came, plant.sowing.old_number, plant.holds) == (Came.SOWING, "S1", "several")
    assert plant.identification.name is None


def test_spores_of_a_recorded_plant_make_a_sowing_of_their_own(f1: Specimen) -> None:
    imported(plants=plants("F2,x,,Ada Quill,,2021,spores,F1,,,"))
    assert [source.specimen for source in one("F2").sowing.sources.all()] == [f1]


def test_ones_own_sowing_in_words_has_the_names_as_sources_and_is_claimed_as_the_cross_it_says(
    tassel: Name, hillii: Name, ada: Member
) -> None:
    imported(
        plants=plants(
            "F2,x,P. 'Late Bloom',Ada Quill,own,2021,spores,\"own sowing, 'Silver Tassel' x hillii\",,,"
        )
    )
    plant = one("F2")
    assert {source.name for source in plant.sowing.sources.all()} == {tassel, hillii}
    assert plant.sowing.by == ada
    claim = ParentageClaim.objects.get(specimen=plant)
    assert (claim.says, claim.ground) == ("cross", "record")
    assert [parent.name for parent in claim.parents.all()] == [tassel, hillii]


def test_ex_a_clone_is_a_sporeling_of_it(tassel: Name) -> None:
    imported(plants=plants("F2,x,Platycerium ex 'Silver Tassel',Ada Quill,,2021,spores,,,,"))
    assert [source.name for source in one("F2").sowing.sources.all()] == [tassel]


def test_the_raisers_own_plant_is_the_first_of_its_name_once(ada: Member) -> None:
    name = make_cultivar("Late Bloom", raiser="Ada Quill", reproduction=Reproduction.DIVISION)
    text = plants(
        "F2,x,P. 'Late Bloom',Ada Quill,own,2021,spores,,,,",
        "F3,x,P. 'Late Bloom',Ada Quill,own,2022,spores,,,,",
    )
    assert ["its first plant" in " ".join(row.notes) for row in planned(plants=text).rows] == [True, False]
    imported(plants=text)
    name.refresh_from_db()
    assert name.original_plant == one("F2")


def test_a_dead_plant_is_kept_until_then() -> None:
    imported(plants="No,Tag,Kept by,State,Gone when\nF2,x,Ada Quill,died,3 May 2020")
    plant, keeping = one("F2"), Keeping.objects.get(specimen__society_number="F2")
    assert (plant.state, plant.ended.words) == (State.DEAD, "3 May 2020")
    assert (keeping.is_open, keeping.until.words) == (False, "3 May 2020")


def test_a_plant_seen_some_time_in_spring_was_alive_on_its_first_day_at_least() -> None:
    imported(plants="No,Tag,Kept by,Last seen\nF2,x,Ada Quill,spring 2020")
    plant = one("F2")
    assert plant.last_seen_alive.isoformat() == "2020-03-01"
    assert "Last seen: spring 2020" in plant.notes


def test_a_private_plant_is_seen_by_its_keeper_alone() -> None:
    imported(plants="No,Tag,Kept by,Private?\nF2,x,Ada Quill,yes\nF3,x,Ada Quill,")
    assert [one(n).seen_by for n in ("F2", "F3")] == [SeenBy.KEEPER, SeenBy.MEMBERS]


def test_the_society_and_households_keep_plants(home: Keeper) -> None:
    imported(plants=plants("F2,x,,the society,,,bought,,,,", "F3,x,,Lode household,,,bought,,,,"))
    assert one("F2").keeper.kind == Keeper.Kind.SOCIETY
    assert one("F3").keeper == home


def test_a_plant_with_a_code_of_its_own_keeps_it() -> None:
    from specimens.naming.codes import Code

    code = Code(2019, 88)
    imported(plants=f"Code,Tag,Kept by\n{code},x,Ada Quill")
    assert Specimen.objects.get().code == str(code)


def test_a_meeting_is_joined_by_name_and_an_unknown_one_goes_to_the_notes() -> None:
    imported(
        meetings="Meeting,Held on\nSpring meeting 2020,10 March 2020",
        plants="No,Tag,Kept by,Meeting\nF2,x,Ada Quill,Spring meeting 2020\nF3,x,Ada Quill,the other one",
    )
    assert one("F2").meeting.date.isoformat() == "2020-03-10"
    assert "Meeting: the other one" in one("F3").notes


def test_plants_are_recorded_in_the_history(ada: Member) -> None:
    imported(by=ada.user, plants=plants("F2,x,P. hillii,Ada Quill,,,bought,,,,"))
    entry = one("F2").history.get()
    assert (entry.history_type, entry.history_user, entry.identification) == (
        "+",
        ada.user,
        one("F2").identification,
    )


def test_a_row_without_a_number_is_told_apart_by_its_content(ada: Member) -> None:
    text = plants(",x,,Ada Quill,,2020,bought,,,,", ",x,,Ada Quill,,2020,bought,,,,")
    imported(plants=text)
    assert Specimen.objects.count() == 2
    assert planned(plants=text).counts() == {"on record": 2}


def test_a_plant_entered_by_hand_is_found_by_its_number(ada: Member) -> None:
    make_plant(ada, society_number="F2", label_text="x")
    row = planned(plants=plants("F2,another tag,,Ada Quill,,,,,,,")).rows[0]
    assert row.fate == "on record"
    assert row.notes == ["On record already, with another Tag; left as it is."]
