"""How a plant's name is written: which words are italic, where the signs stand, how names are sorted.

Sources: International Code of Nomenclature for algae, fungi, and plants (Shenzhen Code, 2018), chapter H;
International Code of Nomenclature for Cultivated Plants, 9th edition (2016).
"""

from specimens.naming.formulas import Order, formula_runs, plain_formula
from specimens.naming.name_parts import NameParts
from specimens.naming.name_words import name_words, sort_key
from specimens.naming.runs import Run, Style, join_words, plain

__all__ = [
    "NameParts",
    "Order",
    "Run",
    "Style",
    "formula_runs",
    "name_runs",
    "plain",
    "plain_formula",
    "plain_name",
    "sort_key",
]


def name_runs(
    parts: NameParts, *, short_genus: bool = False, with_author: bool = False, quotes: bool = True
) -> tuple[Run, ...]:
    """The name as runs of italic and upright text; joined, their texts are the name.

    Latin names are italic; rank words, ×, authors, cultivar epithets, Groups, cf. and ex are upright. A trade
    designation stands in capitals without quotation marks. No parts give no runs.

    >>> name_runs(NameParts(genus="Platycerium", cultivar="Silver Tassel", raised_from=True))
    (Run(text='Platycerium', style='italic'), Run(text=' ex ‘Silver Tassel’', style='roman'))
    """
    return join_words(name_words(parts, short_genus=short_genus, with_author=with_author, quotes=quotes))


def plain_name(
    parts: NameParts, *, short_genus: bool = False, with_author: bool = False, quotes: bool = True
) -> str:
    """The name as plain text, as `name_runs` writes it.

    >>> plain_name(NameParts(genus="Platycerium", species="ridleyi", qualifier="cf."))
    'Platycerium cf. ridleyi'
    """
    return plain(name_runs(parts, short_genus=short_genus, with_author=with_author, quotes=quotes))
