"""A list of names becomes names, with their parents claimed and their traits recorded."""

import pytest

from specimens.models import Name, ParentageClaim, Rank, Reproduction, TraitRecord
from tests.desk.importing.sheets import imported, planned

LIST = "Name;Genus;Species;Raised by;Introduced;Parents;True from spores?;Shield fronds;Spore patches;Notes"
pytestmark = [pytest.mark.django_db, pytest.mark.usefixtures("reference_names")]


def names(*lines: str) -> str:
    return "\n".join([LIST, *lines])


def one(epithet: str) -> Name:
    return Name.objects.get(rank=Rank.CULTIVAR, epithet=epithet)


@pytest.mark.parametrize(
    "written",
    [
        "Platycerium 'Cold Tea'", 'Platycerium "Cold Tea"', "Platycerium ‘Cold Tea’", "Platycerium cv. Cold Tea",
        "P. 'Cold Tea'", "Platycerium bifurcatum 'Cold Tea'",
    ],
)  # fmt: skip
def test_a_cultivar_is_read_however_it_is_written(written: str) -> None:
    imported(
        names=names(
            f'"{written.replace(chr(34), chr(34) * 2)}";Platycerium;bifurcatum;Mabel Reed;c. 1990;;;;;'
        )
    )
    name = one("Cold Tea")
    assert (name.parent.epithet, name.raiser, name.introduced.words) == (
        "bifurcatum",
        "Mabel Reed",
        "c. 1990",
    )


@pytest.mark.parametrize(
    ("words", "reproduction"),
    [
        ("no, pups only", Reproduction.DIVISION), ("division only", Reproduction.DIVISION),
        ("pieces only", Reproduction.DIVISION), ("yes", Reproduction.SPORES),
        ("true from spores", Reproduction.SPORES), ("?", Reproduction.NOT_KNOWN),
        ("not tried", Reproduction.NOT_KNOWN), ("", Reproduction.NOT_KNOWN),
    ],
)  # fmt: skip
def test_reproduction_in_growers_words(words: str, reproduction: str) -> None:
    imported(names=names(f"P. 'Cold Tea';Platycerium;;;;;{words};;;"))
    assert one("Cold Tea").reproduction == reproduction


def test_two_writings_of_perhaps_one_name_stay_two_names() -> None:
    imported(names=names("P. 'Copper Lamp';Platycerium;;;;;;;;", "P. 'Copperlamp';Platycerium;;;;;;;;"))
    assert one("Copper Lamp") != one("Copperlamp")


def test_the_same_writing_twice_is_refused_the_second_time() -> None:
    rows = planned(
        names=names("P. 'Copper Lamp';Platycerium;;;;;;;;", "P. “copper lamp”;Platycerium;;;;;;;;")
    ).rows
    assert [row.fate for row in rows] == ["new", "refused"]


@pytest.mark.parametrize(
    ("parents", "says", "written"),
    [
        ("willinckii x bifurcatum", "cross", ["Platycerium willinckii", "Platycerium bifurcatum"]),
        ("'Old One' × P. hillii", "cross", ["Platycerium ‘Old One’", "Platycerium hillii"]),
        ("sport of 'Old One'", "sport", ["Platycerium ‘Old One’"]),
        ("from spores of alcicorne", "self", ["Platycerium alcicorne"]),
        ("'Old One' selfed", "self", ["Platycerium ‘Old One’"]),
    ],
)
def test_parents_are_claimed_about_the_name(parents: str, says: str, written: list[str]) -> None:
    imported(
        names=names(
            f"P. 'Cold Tea';Platycerium;;Mabel;1990;{parents};;;;", "P. 'Old One';Platycerium;;;;;;;;"
        )
    )
    claim = ParentageClaim.objects.get(name=one("Cold Tea"))
    assert (claim.says, claim.by_words, claim.made.words) == (says, "Mabel", "1990")
    assert [str(parent.name) for parent in claim.parents.all()] == written


def test_parents_we_cannot_read_are_kept_in_the_notes_and_said() -> None:
    text = names("P. 'Cold Tea';Platycerium;;;;two good plants;;;;")
    assert planned(names=text).rows[0].notes == [
        "Parents: “two good plants” — we know no names in this, kept in the notes."
    ]
    imported(names=text)
    assert one("Cold Tea").notes == "Parents: two good plants"


def test_traits_are_recorded_in_the_words_we_know_and_others_kept() -> None:
    imported(
        names=names(
            "P. 'Cold Tea';Platycerium;;;;;;basket;on a spoon;", "P. 'Old One';Platycerium;;;;;;flat;;"
        )
    )
    states = TraitRecord.objects.filter(name=one("Cold Tea")).values_list("state__trait__key", "state__key")
    assert dict(states) == {"shield_fronds": "basket", "spore_patches": "spoon"}
    assert one("Old One").notes == "Shield fronds: flat"


def test_a_species_that_is_new_is_added_not_yet_checked() -> None:
    imported(names=names("Asplenium 'Watch Chain';Asplenium;dentatum;;;;;;;"))
    assert Name.objects.get(rank=Rank.SPECIES, epithet="dentatum").checked is False
    assert one("Watch Chain").parent.epithet == "dentatum"


def test_a_name_that_says_nothing_is_refused() -> None:
    (row,) = planned(names=names(";Platycerium;;Mabel;;;;;;")).rows
    assert row.fate == "refused"


def test_a_name_on_record_is_left_as_it_is_and_what_differs_is_said() -> None:
    imported(names=names("P. 'Cold Tea';Platycerium;;Mabel;1990;;yes;;;"))
    (row,) = planned(names=names("Platycerium ‘Cold Tea’;Platycerium;;Ottoline;1990;;yes;;;")).rows
    assert (row.fate, row.notes) == (
        "on record",
        ["On record already, with another Raised by; left as it is."],
    )
    assert one("Cold Tea").raiser == "Mabel"
