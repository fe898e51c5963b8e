"""Every look a portrait can have, for tests to walk through."""

from functools import cache
from itertools import product

from specimens.portraits import Portrait, draw_portrait
from specimens.portraits.traits import STATES

STAGHORN = ("shield_fronds", "fertile_fronds", "forks", "breadth")
BLADE = ("blade", "outline")

TASSEL = {"shield_fronds": "ball", "fertile_fronds": "erect", "forks": "many", "breadth": "narrow"}
LACE = {"blade": "thrice_divided", "outline": "triangular"}


@cache
def every_portrait() -> dict[str, Portrait]:
    """Portraits of every combination of states, unknown ones among them, by their seeds."""
    return {
        "-".join(states): draw_portrait(
            dict(zip(traits, states, strict=True)), seed="-".join(states), genus=genus
        )
        for genus, traits in (("Platycerium", STAGHORN), ("Asplenium", BLADE))
        for states in product(*(("", *STATES[trait]) for trait in traits))
    }
