"""The answer keys: pairs of names, records that disagree, entries that break a rule."""

import itertools
import re
from collections import Counter

from rapidfuzz import fuzz

from demo_data.cultivars import BY_NAME, CULTIVARS
from demo_data.species import OLD_NAMES
from tests.demo_data.files import read

PAIRS = read("planted.csv")
SAME = [row for row in PAIRS if row["same"] == "1"]
DIFFERENT = [row for row in PAIRS if row["same"] == "0"]
PLANTS = read("plants.csv")
PIECES = read("pieces.xlsx")
STABLE = ("shield fronds", "fertile fronds", "blade", "outline")


def test_twenty_pairs_are_one_plant_and_ten_are_two() -> None:
    assert (len(SAME), len(DIFFERENT)) == (20, 10)


def test_every_planted_name_is_in_the_names_list_and_on_a_plant() -> None:
    on_plants = {row["Believed to be"] for row in PLANTS} | {row["Tag reads"] for row in PLANTS}
    on_plants |= {row["Tag"] for row in PIECES}
    for row in PAIRS:
        for name in (row["name_a"], row["name_b"]):
            assert name in BY_NAME
            assert name in on_plants, name


def test_the_pairs_go_astray_in_many_ways() -> None:
    kinds = Counter(row["kind"] for row in SAME)
    assert len(kinds) >= 12


def test_three_same_pairs_have_nothing_alike_in_letters() -> None:
    unlike = [row for row in SAME if fuzz.ratio(_epithet(row["name_a"]), _epithet(row["name_b"])) < 45]
    assert len(unlike) >= 3
    for row in (row for row in unlike if row["kind"] != "translation"):
        assert BY_NAME[row["name_a"]].parents, row
        assert BY_NAME[row["name_b"]].parents, row


def test_one_plant_has_one_set_of_traits() -> None:
    for row in SAME:
        assert BY_NAME[row["name_a"]].traits == BY_NAME[row["name_b"]].traits, row


def test_two_plants_differ_in_parents_or_in_a_stable_trait() -> None:
    for row in DIFFERENT:
        a, b = BY_NAME[row["name_a"]], BY_NAME[row["name_b"]]
        other_looks = any(a.traits.get(trait) != b.traits.get(trait) for trait in STABLE)
        assert a.parents != b.parents or other_looks, row


def test_no_other_names_of_a_genus_look_alike() -> None:
    planted = {frozenset((row["name_a"], row["name_b"])) for row in PAIRS}
    for a, b in itertools.combinations(CULTIVARS, 2):
        if a.genus == b.genus and frozenset((a.name, b.name)) not in planted:
            assert fuzz.ratio(a.epithet.lower(), b.epithet.lower()) < 70, (a.name, b.name)


def test_parents_named_in_words_are_in_the_book_and_older() -> None:
    by_epithet = {cultivar.epithet: cultivar for cultivar in CULTIVARS}
    for cultivar in CULTIVARS:
        for epithet in re.findall(r"'((?:[^']|'s )+)'", cultivar.parents):
            parent = by_epithet[epithet]
            assert (parent.year or 0) <= (cultivar.year or 3000), cultivar.name


def test_records_that_disagree_are_few_and_of_the_kinds_looked_for() -> None:
    kinds = Counter(row["kind"] for row in read("contradictions.csv"))
    assert kinds == {"date": 3, "solitary": 1, "name": 4, "twice": 2, "two plants": 1}


def test_records_that_disagree_are_in_the_file_named() -> None:
    numbers = {
        "plants.csv": {row["Acc. No"] for row in PLANTS},
        "pieces.xlsx": {row["No."] for row in PIECES},
    }
    for row in read("contradictions.csv"):
        assert row["record"] in numbers[row["file"]]
        assert row["other"]


def test_no_piece_but_the_listed_bears_another_cultivar_name_than_its_parent() -> None:
    """Compared by what is believed, else by the tag, where both say a cultivar in full."""
    listed = {row["record"] for row in read("contradictions.csv") if row["kind"] == "name"}
    plants = {row["Acc. No"]: row for row in PLANTS if row["Acc. No"]}
    for row in plants.values():
        parent = plants.get(row["Parent plant"])
        if parent and row["How acquired"] != "sport" and row["Acc. No"] not in listed:
            mine, older = _thought(row), _thought(parent)
            if mine in BY_NAME and older in BY_NAME:
                assert mine == older, row["Acc. No"]


def test_synonyms_lead_to_names_that_are_grown() -> None:
    grown = {_thought(row) for row in PLANTS}
    assert sum(accepted in grown for accepted in OLD_NAMES) > 15


def _thought(row: dict[str, str]) -> str:
    return row["Believed to be"] or row["Tag reads"]


def _epithet(name: str) -> str:
    return name.split("'", 1)[1].rstrip("'").lower()
