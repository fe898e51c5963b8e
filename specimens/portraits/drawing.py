"""Draws a plant from what is known of it."""

from collections.abc import Mapping
from functools import lru_cache

from specimens.portraits.blades import blade
from specimens.portraits.shapes import Portrait, framed
from specimens.portraits.staghorns import staghorn
from specimens.portraits.traits import STATES


def draw_portrait(traits: Mapping[str, str], *, seed: str, genus: str = "Platycerium") -> Portrait:
    """Return the portrait of a plant.

    The same traits, seed and genus give the same portrait for ever. Every point lies inside the frame
    of 200 × 250. A trait that is not known, or in a state we cannot draw, is drawn faint in a middling
    state.

    Parameters
    ----------
    traits
        For staghorns `shield_fronds` (ball, basket, ring), `fertile_fronds` (erect, spreading, arching,
        hanging), `forks` (unforked, two, few, many) and `breadth` (narrow, medium, broad); for other
        ferns `blade` (strap, once_divided, twice_divided, thrice_divided) and `outline` (lance,
        triangular, round). Others are passed over.
    seed
        The code of the plant: each has its own picture and keeps it.
    genus
        Platycerium is drawn as a staghorn, any other genus as a blade.
    """
    used = frozenset((trait, traits[trait]) for trait in STATES if trait in traits)
    return _drawn(used, seed, genus)


@lru_cache(maxsize=128)  # two pages of a list; a portrait takes some 80 kB
def _drawn(traits: frozenset[tuple[str, str]], seed: str, genus: str) -> Portrait:
    draw = staghorn if genus == "Platycerium" else blade
    return Portrait(seed, *framed(*draw(dict(traits), seed)))
