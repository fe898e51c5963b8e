"""From what a tag says to a name on record."""

import pytest

from specimens.models import Name, Rank, Reproduction
from specimens.services.reading import KnownNames, name_for_label
from tests.cast import make_cultivar

pytestmark = pytest.mark.django_db


@pytest.fixture
def known(reference_names: None, db: None) -> KnownNames:
    make_cultivar("Silver Tassel")
    make_cultivar("Cristata", "Nephrolepis")
    make_cultivar("Cristata", "Dryopteris")
    return KnownNames.load()


def test_labels_find_their_names(known: KnownNames) -> None:
    meant = {
        "Silver Tassel": "Platycerium ‘Silver Tassel’",
        "P. 'silver tassel'": "Platycerium ‘Silver Tassel’",
        "Platycerium ‘Silver-Tassel’": "Platycerium ‘Silver Tassel’",
        "bifurcatum": "Platycerium bifurcatum",
        "bifurcatum subsp. veitchii": "Platycerium bifurcatum subsp. veitchii",
        "bifurcatum ssp veitchii": "Platycerium bifurcatum subsp. veitchii",
        "P. bifurcatum": "Platycerium bifurcatum",
        "Platycerium ridleyi": "Platycerium ridleyi",
        "Nephrolepis Cristata": "Nephrolepis ‘Cristata’",
        "Platycerium bifurcatum var. hillii": "Platycerium bifurcatum var. hillii",
        "Phyllitis scolopendrium": "Phyllitis scolopendrium",
    }
    found = {label: known.match(label).name for label in meant}
    assert {label: name and name.written for label, name in found.items()} == meant


def test_a_species_of_two_authors_is_the_accepted_one(known: KnownNames) -> None:
    assert known.match("Platycerium alcicorne").name.author == "Desv."


def test_an_epithet_of_two_genera_is_nobodys_without_its_genus(known: KnownNames) -> None:
    assert known.match("Cristata").name is None


def test_doubt_on_the_label_is_kept(known: KnownNames) -> None:
    doubts = {"cf. ridleyi": "cf.", "P. aff. ridleyi": "aff.", "ridleyi?": "?", "ridleyi": ""}
    matches = {label: known.match(label) for label in doubts}
    assert {label: match.qualifier for label, match in matches.items()} == doubts
    assert {match.name.epithet for match in matches.values()} == {"ridleyi"}


def test_a_label_may_say_nothing(known: KnownNames) -> None:
    for label in ("", "?", "unknown", "  ", "no label"):
        assert name_for_label(label, by=None, known=known) == (None, "")


def test_an_unknown_name_is_kept_not_yet_checked(known: KnownNames) -> None:
    name, _ = name_for_label("Platycerium 'Moonlit Weir'", by=None, known=known)
    assert (name.written, name.checked, name.rank) == ("Platycerium ‘Moonlit Weir’", False, Rank.CULTIVAR)
    assert name.reproduction == Reproduction.NOT_KNOWN
    again, _ = name_for_label("P. Moonlit Weir", by=None, known=known)
    assert again == name


def test_an_unknown_name_without_a_genus_is_kept_without_one(known: KnownNames) -> None:
    name, _ = name_for_label("Moonlit Weir", by=None, known=known)
    assert name.written == "‘Moonlit Weir’"
    assert not name.checked


def test_two_species_with_a_sign_between_are_a_formula(known: KnownNames) -> None:
    name, _ = name_for_label("P. veitchii x hillii", by=None, known=known)
    assert (name.rank, name.written) == (Rank.FORMULA, "Platycerium hillii × P. veitchii")
    assert name_for_label("Platycerium hillii × veitchii", by=None, known=known)[0] == name


def test_no_label_breaks_the_reading(known: KnownNames) -> None:
    labels = ("x" * 500, "😀🌿", "‮gnorw", "<script>alert(1)</script>", "'''", "×", "a ×", "1234", "\x00\x07")
    for label in labels:
        name_for_label(label, by=None, known=known)
    assert Name.objects.filter(rank=Rank.GENUS, epithet="Platycerium").count() == 1
