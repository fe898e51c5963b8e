"""Names and hybrid formulas as the codes of nomenclature print them.

ICN: International Code of Nomenclature for algae, fungi, and plants (Shenzhen Code, 2018), chapter H.
ICNCP: International Code of Nomenclature for Cultivated Plants, 9th edition (2016).
"""

import pytest

from specimens.naming.names import NameParts, formula_runs, name_runs, plain_formula, plain_name


def species(name: str, author: str = "") -> NameParts:
    genus, _, epithet = name.partition(" ")
    return NameParts(genus, species=epithet, author=author)


POLYPODIUM = [
    NameParts("Polypodium", species="vulgare", infra=(("subsp.", "prionodes"),), author="(Asch.) Rothm."),
    NameParts("Polypodium", species="vulgare", infra=(("subsp.", "vulgare"),), author="L."),
]


@pytest.mark.parametrize(
    ("parents", "printed"),
    [
        ([species("Agrostis", "L."), species("Polypogon", "Desf.")], "Agrostis L. × Polypogon Desf."),
        (
            [species("Agrostis stolonifera", "L."), species("Polypogon monspeliensis", "(L.) Desf.")],
            "Agrostis stolonifera L. × Polypogon monspeliensis (L.) Desf.",
        ),
        (
            [
                species("Mentha aquatica", "L."),
                species("Mentha arvensis", "L."),
                species("Mentha spicata", "L."),
            ],
            "Mentha aquatica L. × M. arvensis L. × M. spicata L.",
        ),
        (POLYPODIUM, "Polypodium vulgare subsp. prionodes (Asch.) Rothm. × P. vulgare L. subsp. vulgare"),
        ([species("Salix aurita", "L."), species("Salix caprea", "L.")], "Salix aurita L. × S. caprea L."),
    ],
)
def test_formulas_are_printed_as_in_icn_article_h2_example_1(parents: list[NameParts], printed: str) -> None:
    assert plain_formula(parents, with_author=True) == printed


def test_the_second_parent_keeps_its_genus_as_in_icn_article_h2_example_2() -> None:
    parents = [species("Kunzea linearis", "(Kirk) de Lange"), species("Kunzea robusta", "de Lange & Toelken")]
    assert plain_formula(parents, with_author=True) == (
        "Kunzea linearis (Kirk) de Lange × K. robusta de Lange & Toelken"
    )


def test_parents_stand_in_alphabetical_order_by_icn_recommendation_h2a1() -> None:
    parents = [species("Salix caprea"), species("Salix aurita")]
    assert plain_formula(parents) == "Salix aurita × S. caprea"


def test_direction_is_shown_by_the_signs_for_female_and_male_by_icn_recommendation_h2a1() -> None:
    parents = [species("Salix caprea"), species("Salix aurita")]
    assert plain_formula(parents, egg_parent=0) == "Salix aurita ♂ × S. caprea ♀"


def test_the_sign_is_the_multiplication_sign_of_icn_article_h11() -> None:
    signs = [
        run.text
        for run in formula_runs([species("Salix aurita"), species("Salix caprea")])
        if "×" in run.text
    ]
    assert signs == [" \u00d7 "]


@pytest.mark.parametrize(
    ("parts", "printed"),
    [
        (NameParts("Agropogon", genus_hybrid=True), "×Agropogon"),
        (NameParts("Mentha", species="smithiana", species_hybrid=True), "Mentha ×smithiana"),
        (
            NameParts("Polypodium", species="vulgare", infra=(("nothosubsp.", "mantoniae"),)),
            "Polypodium vulgare nothosubsp. mantoniae",
        ),
    ],
)
def test_named_hybrids_are_printed_as_in_icn_article_h31(parts: NameParts, printed: str) -> None:
    assert plain_name(parts) == printed


@pytest.mark.parametrize(
    ("parts", "printed"),
    [
        (NameParts("Cryptomeria", species="japonica", cultivar="Elegans"), "Cryptomeria japonica ‘Elegans’"),
        (
            NameParts("Dracaena", species="fragrans", group="Deremensis", cultivar="Christianne"),
            "Dracaena fragrans (Deremensis Group) ‘Christianne’",
        ),
        (
            NameParts("Platycerium", cultivar="Silver Tassel", raised_from=True),
            "Platycerium ex ‘Silver Tassel’",
        ),
    ],
)
def test_cultivated_plants_are_printed_as_is_common_practice(parts: NameParts, printed: str) -> None:
    """Single quotation marks and the Group in round brackets: ICNCP, examples from memory; ex: common practice."""
    assert plain_name(parts) == printed
    assert "".join(run.text for run in name_runs(parts) if run.style == "italic") == " ".join(
        filter(None, [parts.genus, parts.species])
    )
