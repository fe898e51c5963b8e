"""Genus, species, Group, trade designation, epithet and numbers come off a label."""

import pytest

from lineage.core.lookalikes import read_name

CASES = [
    ("Platycerium hillii 'Gurnard'", {"genus": "Platycerium", "species": "hillii", "epithet": "Gurnard"}),
    ("Platycerum 'Gurnard'", {"genus": "Platycerium", "misspelt_genus": "Platycerum", "epithet": "Gurnard"}),
    ("Nephrolepsis exaltata ‘Low Tide’", {"genus": "Nephrolepis", "species": "exaltata", "epithet": "Low Tide"}),
    ("Asplenium Low Tide", {"genus": "Asplenium", "species": "", "epithet": "Low Tide", "quoted": False}),
    ("Dryopteris affinis subsp. borreri 'Low Tide'", {"ranks": (("subsp.", "borreri"),), "epithet": "Low Tide"}),
    ("Polystichum setiferum (Divisilobum Group) 'Low Tide'", {"group": "Divisilobum", "epithet": "Low Tide"}),
    ("Polystichum setiferum Plumosum Group", {"group": "Plumosum", "species": "setiferum"}),
    ("Athyrium 'Gurnard' LOW TIDE™", {"epithet": "Gurnard", "trade": "LOW TIDE"}),
    ("Platycerium × elmanii", {"hybrid": True, "species": "elmanii"}),
    ("Platycerium ex 'Marsh Lantern'", {"spores": True, "epithet": "Marsh Lantern"}),
    ("Dryopteris affinis cv. Gurnard", {"species": "affinis", "epithet": "Gurnard"}),
    ("P. bifurcatum cv. Gurnard", {"genus": "Platycerium", "species": "bifurcatum", "epithet": "Gurnard"}),
    ("Z. nosuchum cv. Gurnard", {"genus": "", "initial": "Z", "species": "nosuchum", "epithet": "Gurnard"}),
    ("A. raddianum Low Tide", {"genus": "Adiantum", "species": "raddianum", "epithet": "Low Tide"}),
    ("Marsh Lantern No. 12", {"genus": "", "numbers": (12,), "epithet": "Marsh Lantern No. 12"}),
    ("Marsh Lantern IV", {"numbers": (4,)}),
    ("Platycerium 'Gurnard's Pride'", {"epithet": "Gurnard's Pride"}),
    ("''Gurnard''", {"epithet": "Gurnard", "quoted": True}),
    ("Platycerium bifurcatum", {"species": "bifurcatum", "epithet": ""}),
    ("marsh lantern", {"species": "", "epithet": "marsh lantern"}),
    ("PLATYCERIUM BIFURCATUM MARSH LANTERN", {"species": "bifurcatum", "epithet": "MARSH LANTERN"}),
    ("Platycerium bifurcatum 'Gurnard' from the big bench", {"rest": "from the big bench"}),
]  # fmt: skip


@pytest.mark.parametrize(("label", "parts"), CASES, ids=[label for label, _ in CASES])
def test_the_parts_of_a_label(label, parts):
    reading = read_name(label)
    assert {name: getattr(reading, name) for name in parts} == parts


def test_a_known_genus_spells_out_an_initial():
    assert read_name("P. 'Gurnard'", genus="Platycerium").genus == "Platycerium"
    assert read_name("P. 'Gurnard'").initial == "P"


def test_a_genus_on_the_label_outranks_the_known_one():
    assert read_name("Pteris 'Gurnard'", genus="Platycerium").genus == "Pteris"
