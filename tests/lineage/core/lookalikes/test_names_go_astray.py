"""The ways one name is written differently, and the ways two plants are named alike."""

import pytest

from lineage.core.lookalikes import compare_names, spelling_level

ONE_PLANT = [
    ("Marsh Lantern", "MARSH-LANTERN", "same"),
    ("'Marsh Lantern'", "„Marsh Lantern“", "same"),
    ("MarshLantern", "Marsh Lantern", "same"),
    ("Marshlantern", "Marsh Lantern", "joined"),
    ("Tasselbrook", "Tasselbrnok", "slip"),
    ("Digitifera", "Digitiferum", "ending"),
    ("Haverstocki", "Haverstockii", "ending"),
    ("Haverstock", "Haverstockii", "ending"),
    ("Haverstock's Pride", "Haverstock Pride", "same"),
    ("Haverstocks Pride", "Haverstock Pride", "plural"),
    ("Mount Tarn", "Mt Tarn", "abbreviation"),
    ("Saint Orla", "St. Orla", "abbreviation"),
    ("Dr Haverstock", "Doktor Haverstock", "abbreviation"),
    ("Lantern III", "Lantern No. 3", "same"),
    ("Lantern Three", "Lantern #3", "same"),
    ("Kölner Laub", "Koelner Laub", "same"),
    ("Kölner Laub", "Kolner Laub", "spelling"),
    ("Congesta", "Congested", "translation"),
    ("Ogon", "Golden", "translation"),
    ("Robert Haverstock", "Bob Haverstock", "nickname"),
    ("Robert Haverstock", "R. Haverstock", "initial"),
    ("Lantern Marsh", "Marsh Lantern", "order"),
    ("Plumosum Marsh Lantern", "Marsh Lantern", "group-word"),
    ("Marsh Lantern clone", "Marsh Lantern", "same"),
    ("Feniks Cove", "Phenix Cove", "sound"),
]
TWO_PLANTS = [
    ("Lantern No. 3", "Lantern No. 13", "number"),
    ("Lantern No. 3", "Lantern", "number"),
    ("Golden Lantern", "Silver Lantern", "opposite"),
    ("Lanceolata Major", "Lanceolata Minor", "opposite"),
    ("Edith Haverstock", "Edna Haverstock", "first-name"),
    ("Mrs Haverstock", "Miss Haverstock", "title"),
    ("Mrs Haverstock", "Edith Haverstock", "title"),
    ("Lake Tarn", "Mount Tarn", "place"),
    ("Cristata", "Cristata Angustata", "contains"),
    ("Lantern", "Lantern Dwarf", "contains"),
    ("Marsh Lantern", "Marsh Curlew", "different-word"),
    ("Star Lane", "Star Lake", "two-words"),
]


@pytest.mark.parametrize(("a", "b", "why"), ONE_PLANT)
def test_one_name_written_two_ways_scores_high(a, b, why):
    likeness = compare_names(a, b, genus_a="Asplenium", genus_b="Asplenium")
    assert likeness.score >= 0.75
    assert why in {reason.key for reason in likeness.reasons}
    assert not likeness.guards
    assert likeness.level != "far"


@pytest.mark.parametrize(("a", "b", "why"), TWO_PLANTS)
def test_two_names_a_grower_keeps_apart_score_low_with_a_named_guard(a, b, why):
    likeness = compare_names(a, b, genus_a="Asplenium", genus_b="Asplenium")
    assert likeness.score < 0.5
    assert why in {guard.key for guard in likeness.guards}
    assert likeness.level == "far"


@pytest.mark.parametrize(
    ("a", "b"),
    [
        ("Phyllitis scolopendrium 'Marsh Lantern'", "Asplenium 'Marsh Lantern'"),
        ("Polypodium aureum 'Marsh Lantern'", "Phlebodium aureum 'Marsh Lantern'"),
        ("Humata 'Marsh Lantern'", "Davallia 'Marsh Lantern'"),
    ],
)
def test_a_name_under_an_older_genus_is_the_same_name(a, b):
    assert compare_names(a, b).score == 1.0


def test_a_genus_moved_in_part_leaves_a_doubt():
    likeness = compare_names("Polypodium 'Marsh Lantern'", "Phlebodium aureum 'Marsh Lantern'")
    assert 0.75 <= likeness.score < 1
    assert likeness.reasons[0].key == "moved-genus"


def test_one_name_in_two_genera_is_two_names():
    likeness = compare_names("Marsh Lantern", "Marsh Lantern", genus_a="Pteris", genus_b="Davallia")
    assert likeness.score < 0.2
    assert str(likeness.guards[0]) == "They stand in different genera: ‘Davallia’ and ‘Pteris’."


def test_a_sporeling_of_a_name_is_not_that_name():
    likeness = compare_names("Platycerium ex 'Marsh Lantern'", "Platycerium 'Marsh Lantern'")
    assert likeness.score < 0.5
    assert "spores" in {guard.key for guard in likeness.guards}


def test_a_common_word_under_two_species_is_weaker_than_a_rare_one():
    common = compare_names("Dryopteris affinis 'Cristata'", "Dryopteris dilatata 'Cristata'")
    rare = compare_names("Dryopteris affinis 'Tasselbrook'", "Dryopteris dilatata 'Tasselbrook'")
    assert common.score < rare.score < 1
    assert "common-word" in {guard.key for guard in common.guards}
    assert "species" in {guard.key for guard in rare.guards}


@pytest.mark.parametrize(
    ("a", "b", "level"),
    [
        ("Marsh Lantern", "‘MARSH LANTERN’", "same"),
        ("Digitifera", "Digitiferum", "same"),
        ("Mount Tarn", "Mt. Tarn", "same"),
        ("Tasselbrook", "Tasselbrnok", "near"),
        ("Marsh Lantern", "Lantern Marsh", "near"),
        ("Marshlantern", "Marsh Lantern", "near"),
        ("Feniks Cove", "Phenix Cove", "sounds alike"),
        ("Wavy", "Undulatum", "lexicon"),
        ("Marsh Lantern", "Copper Kettle", "far"),
    ],
)
def test_the_level_says_how_two_names_are_alike(a, b, level):
    assert spelling_level(compare_names(a, b)) == level


def test_two_plain_words_of_nearly_one_meaning_are_two_names():
    assert compare_names("Bright Lantern", "Glossy Lantern").level == "far"
