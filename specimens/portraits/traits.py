"""Reads what is known of a plant's looks; what is not known is drawn faint."""

from collections.abc import Mapping
from dataclasses import dataclass

FAINT = 0.34


@dataclass(frozen=True)
class Look:
    """One trait as it will be drawn: its state, or a middling one when the state is not known."""

    state: str
    known: bool

    @property
    def strength(self) -> float:
        """What to multiply opacities by."""
        return 1.0 if self.known else FAINT


STATES: dict[str, tuple[str, ...]] = {
    # The first of each stands in when nothing is known.
    "shield_fronds": ("ball", "basket", "ring"),
    "fertile_fronds": ("arching", "erect", "spreading", "hanging"),
    "forks": ("few", "unforked", "two", "many"),
    "breadth": ("medium", "narrow", "broad"),
    "blade": ("once_divided", "strap", "twice_divided", "thrice_divided"),
    "outline": ("lance", "triangular", "round"),
}


def look(traits: Mapping[str, str], trait: str) -> Look:
    """The trait as it will be drawn; a state we cannot draw counts as not known."""
    state = traits.get(trait, "")
    if state in STATES[trait]:
        return Look(state, known=True)
    return Look(STATES[trait][0], known=False)
