"""Cultivar epithets by the International Code of Nomenclature for Cultivated Plants, 9th edition (2016)."""

import pytest

from specimens.naming.remarks import remarks, tidy_epithet


def keys(epithet: str, year_named: int | None = None, genus: str = "") -> list[str]:
    return [remark.key for remark in remarks(epithet, year_named=year_named, genus=genus)]


def test_conjunctions_and_prepositions_are_small_as_in_cloth_of_gold() -> None:
    assert tidy_epithet("cloth OF gold") == "Cloth of Gold"
    assert keys("Cloth of Gold") == []


def test_the_word_after_a_hyphen_may_be_small() -> None:
    assert keys("Hart’s-tongue Lace") == []


def test_thirty_signs_bind_names_given_since_1996() -> None:
    """Counted without spaces and quotation marks."""
    thirty = "Abcdefghij Klmnopqrst Uvwxyzabcd"
    assert keys(thirty, 1996) == []
    assert keys(thirty + "e", 1996) == ["length"]
    assert keys(thirty + "e", 1995) == []


@pytest.mark.parametrize(
    "epithet", ["Divisilobum", "Plumosum", "Cristatum", "Grandiceps", "Gracillimum", "Bifidomultifidum"]
)
def test_latin_names_of_old_ferns_are_fine_and_new_ones_are_not(epithet: str) -> None:
    """The line is 1 January 1959; the epithets are Victorian ones of British ferns (common practice)."""
    assert keys(epithet, 1880) == keys(epithet) == []
    assert keys(epithet, 1959) == ["latin"]


@pytest.mark.parametrize(
    "epithet",
    ["Silver Tassel", "Branford Beauty", "Burgundy Lace", "Ogon Nishiki", "Netherlands", "Boston Blue"],
)
def test_names_in_living_languages_are_not_taken_for_latin(epithet: str) -> None:
    assert keys(epithet, 2001) == []


@pytest.mark.parametrize(
    ("word", "since"),
    [
        ("Form", 1959),
        ("Varieties", 1959),
        ("Hybrid", 1996),
        ("Strains", 1996),
        ("Improved", 1996),
        ("Grex", 1996),
    ],
)
def test_banned_words_bind_from_their_year_on(word: str, since: int) -> None:
    """The list is the code's; the years are from memory."""
    assert keys(f"Silver {word}", since) == ["banned word"]
    assert keys(f"Silver {word}", since - 1) == []
    assert keys(f"Silver {word}") == []


@pytest.mark.parametrize(
    ("epithet", "key"), [("Q", "one letter"), ("7", "numerals"), ("1998 12", "numerals")]
)
def test_a_single_letter_or_numerals_alone_do_not_do(epithet: str, key: str) -> None:
    assert keys(epithet) == [key]


def test_a_genus_or_its_common_name_confuses() -> None:
    assert keys("Platycerium", genus="Platycerium") == ["genus"]
    assert keys("Silver Staghorn", genus="Platycerium") == ["genus"]
    assert keys("Silver Staghorn", genus="Adiantum") == []
    assert keys("Silver Fern", genus="Adiantum") == ["genus"]
