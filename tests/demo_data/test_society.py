"""What the invented society has: enough of everything, and nothing that points nowhere."""

import re
from collections import Counter

from demo_data.people import PEOPLE
from tests.demo_data.files import read

MEMBERS = read("members.xlsx")
NAMES = read("names.csv")
PLANTS = read("plants.csv")
PIECES = read("pieces.xlsx")
SOWINGS = read("sowings.csv")
CROSSES = read("crosses.csv")
MEETINGS = read("meetings.csv")

STATES = {
    "Shield fronds": {"ball", "basket", "ring"},
    "Fertile fronds": {"erect", "arching", "hanging"},
    "Forks": {"unforked", "two", "few", "many"},
    "Breadth": {"narrow", "medium", "broad"},
    "Spore patches": {"tips", "first fork", "middle", "on a spoon", "near the base", "below the tip"},
    "Blade": {"strap", "once divided", "twice divided", "thrice divided"},
    "Outline": {"lance", "triangular", "round"},
}
SOLITARY = ("superbum", "grande", "holttumii", "wandae")


def test_members_and_their_households() -> None:
    households = Counter(row["Household"] for row in MEMBERS if row["Household"])
    assert len(MEMBERS) >= 40
    assert sorted(households.values()) == [2, 2, 2]


def test_eight_members_have_no_mailbox_and_the_rest_an_example_one() -> None:
    mailboxes = [row["E-mail"] for row in MEMBERS]
    assert mailboxes.count("") == 8
    assert all(box.endswith("@example.org") for box in mailboxes if box)


def test_every_office_is_held() -> None:
    assert Counter(row["Office held"] for row in MEMBERS if row["Office held"]) == {
        "curator": 1,
        "show committee": 2,
        "membership secretary": 1,
        "spore keeper": 1,
        "administrator": 1,
    }


def test_members_can_be_told_by_first_name_and_by_initial() -> None:
    assert len({row["Full name"].split()[0] for row in MEMBERS}) == len(MEMBERS)
    assert len({(row["Full name"][0], row["Full name"].split()[-1]) for row in MEMBERS}) == len(MEMBERS)


def test_members_wish_to_appear_in_all_three_ways() -> None:
    assert {row["Wishes to appear"] for row in MEMBERS} == {"by name", "a member", "curator only"}


def test_names_of_eight_genera_staghorns_most() -> None:
    genera = Counter(row["Genus"] for row in NAMES)
    assert len(NAMES) >= 120
    assert len(genera) >= 8
    assert genera.most_common(1)[0][0] == "Platycerium"


def test_traits_are_states_a_portrait_can_draw() -> None:
    for trait, states in STATES.items():
        assert {row[trait] for row in NAMES} - {""} <= states


def test_staghorns_and_other_ferns_are_described_each_in_their_way() -> None:
    for row in NAMES:
        elsewhere = ("Blade", "Outline") if row["Genus"] == "Platycerium" else ("Shield fronds", "Forks")
        assert not any(row[trait] for trait in elsewhere)


def test_six_hundred_plants_and_more() -> None:
    assert len(PLANTS) + len(PIECES) >= 600
    assert 140 <= len(PIECES) <= 160


def test_old_numbers_are_given_once_and_some_not_at_all() -> None:
    numbers = Counter(row["Acc. No"] for row in PLANTS if row["Acc. No"])
    assert set(numbers.values()) == {1}
    assert 20 <= sum(not row["Acc. No"] for row in PLANTS) <= 90


def test_every_number_pointed_to_is_there() -> None:
    plants = {row["Acc. No"] for row in PLANTS}
    pieces = {row["No."] for row in PIECES}
    sowings = {row["Sowing no."] for row in SOWINGS}
    for row in PLANTS:
        assert set(re.findall(r"\b[FS]\d+\b", row["Parent plant"])) <= plants | sowings
    for row in PIECES:
        assert set(re.findall(r"\b[FD]\d+\b", row["Pup of"])) <= plants | pieces
    for row in SOWINGS:
        assert set(re.findall(r"\bF\d+\b", row["Spores of"])) <= plants


def test_every_keeper_is_a_member_a_household_or_the_society() -> None:
    known = {"the society"} | {f"{person.household} household" for person in PEOPLE if person.household}
    for person in PEOPLE:
        first, _, surname = person.name.partition(" ")
        known |= {person.name, f"{first[0]}. {surname}"}
    assert {row["Kept by"] for row in PLANTS} <= known


def test_plants_are_in_every_state() -> None:
    states = {row["State"] for row in PLANTS}
    assert {"growing", "dead", "left the society", "cannot find", "stolen", "entered by mistake"} <= states


def test_tags_are_doubted_in_every_way() -> None:
    believed = [row["Believed to be"] for row in PLANTS]
    for sign in (" cf. ", " aff. ", " ex ", "?"):
        assert any(sign in words for words in believed), sign
    assert believed.count("unknown") >= 10


def test_a_handful_of_plants_are_private_and_ten_pots_hold_several() -> None:
    assert 5 <= sum(row["Private?"] == "yes" for row in PLANTS) <= 10
    assert sum(bool(row["Holds"]) for row in PLANTS) == 10


def test_some_tags_bear_old_botanical_names_and_misspelt_genera() -> None:
    tags = " | ".join(row["Tag reads"] for row in PLANTS)
    for words in ("P. alcicorne of gardens", "Platycerum", "angustatum", "Humata"):
        assert words in tags, words


def test_a_chain_of_pieces_is_five_deep() -> None:
    parents = {row["Acc. No"]: row["Parent plant"] for row in PLANTS if row["Acc. No"]}
    parents |= {row["No."]: row["Pup of"] for row in PIECES}

    def depth(number: str) -> int:
        return 1 + depth(parents[number]) if parents[number] in parents else 0

    assert max(map(depth, parents)) >= 5


def test_some_parents_are_told_in_words_only() -> None:
    assert sum(bool(re.search(r"[a-z]{3}", row["Parent plant"])) for row in PLANTS) >= 10
    assert sum(bool(re.search(r"[a-z]{3}", row["Pup of"])) for row in PIECES) >= 3


def test_pieces_are_of_four_kinds_and_some_sported() -> None:
    assert {row["Kind"] for row in PIECES} == {
        "pup", "crown division", "rhizome piece", "bulbil", "pup (sport)",
    }  # fmt: skip


def test_pieces_went_round_at_meetings_there_were() -> None:
    meetings = {row["Meeting"] for row in MEETINGS}
    used = {row["At which meeting"] for row in PIECES} - {""}
    assert len(MEETINGS) == 24
    assert len(used) > 10
    assert used <= meetings


def test_forty_sowings_several_of_them_mixed() -> None:
    mixed = [row for row in SOWINGS if re.search(r"\d\)?( \+|,| and) ", row["Spores of"])]
    assert len(SOWINGS) == 40
    assert len(mixed) >= 8


def test_twelve_crosses_of_three_kinds_and_three_grounds() -> None:
    assert len(CROSSES) == 12
    assert {row["How it came about"] for row in CROSSES} == {"chance", "mixed sowing", "intended"}
    assert {row["How known"] for row in CROSSES} == {"grower's record", "looks", "DNA"}
    assert sum(bool(row["Formerly thought"]) for row in CROSSES) >= 3


def test_solitary_species_come_from_spores_but_for_the_one_pup_asked_about() -> None:
    numbers = {row["Acc. No"]: row for row in PLANTS if row["Acc. No"]}
    taken = [numbers.get(row["Parent plant"]) for row in PLANTS]
    taken += [numbers.get(row["Pup of"]) for row in PIECES]
    named = [f"{row['Tag reads']} {row['Believed to be']}" for row in taken if row]
    assert sum(any(species in words for species in SOLITARY) for words in named) == 1
