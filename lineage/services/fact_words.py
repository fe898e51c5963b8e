"""Computed facts in a grower's words. Numbers come with their meaning."""

from __future__ import annotations

from fractions import Fraction

ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")
PARTS = {
    Fraction(1, 2): "a half",
    Fraction(1, 4): "a quarter",
    Fraction(3, 4): "three quarters",
    Fraction(1, 8): "an eighth",
    Fraction(3, 8): "three eighths",
    Fraction(5, 8): "five eighths",
    Fraction(7, 8): "seven eighths",
}
UNRELATED = (
    "Plants where a line starts are taken as unrelated and not inbred; "
    "if they were not, the figure would be higher."
)


def part_words(share: float) -> str:
    """How much of a plant: “all”, “a half”, “5/16”, “about 33 %”."""
    if share in (0, 1):
        return "all" if share else "none"
    exact = Fraction(share)
    if exact in PARTS:
        return PARTS[exact]
    return str(exact) if exact.denominator <= 64 else f"about {100 * share:.2g} %"


def share_words(lo: float, hi: float) -> str:
    """Bounds of a share: “a half”, “between a quarter and a half”, “up to a half”, “at least a half”.

    >>> share_words(0.25, 0.5)
    'between a quarter and a half'
    """
    if lo == hi:
        return part_words(lo)
    if lo == 0 and hi == 1:
        return "anything from none to all"
    if lo == 0:
        return f"up to {part_words(hi)}"
    return f"at least {part_words(lo)}" if hi == 1 else f"between {part_words(lo)} and {part_words(hi)}"


def ordinal(number: int) -> str:
    """“third”, “14th”."""
    if number < len(ORDINALS):
        return ORDINALS[number]
    ending = "th" if number % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def generation_words(least: int, most: int) -> str:
    """Which generation from spores; '' where the plant's line starts with itself.

    >>> generation_words(3, 3)
    'third generation from spores since the line starts'
    """
    if most == 0:
        return ""
    if least == most:
        which = ordinal(least)
    elif least == 0:
        which = f"at most {ordinal(most)}"
    else:
        which = f"{ordinal(least)} to {ordinal(most)}"
    return f"{which} generation from spores since the line starts"


def division_words(steps: int, *, counted: bool) -> str:
    """How far from the first plant; `counted` is False where a name alone joins them."""
    if not counted:
        return (
            "how many divisions lie since the first plant is not known: its name alone joins it to that plant"
        )
    if steps == 0:
        return "the first plant, as far as we know"
    return f"{steps} division{'s' if steps > 1 else ''} since the first plant"


def piece_words(count: int) -> str:
    """How many recorded plants are pieces of this one plant, itself among them."""
    if count <= 1:
        return "No other piece of this plant is on record."
    return f"{count} plants on record are pieces of this one plant."


def inbreeding_words(lo: float, hi: float) -> str:
    """How closely the parents were related, with its coefficient."""
    if lo == hi == 0:
        return "not related, as far as we know (F = 0)"
    figure = f"F = {lo:.3g}" if lo == hi else f"F between {lo:.3g} and {hi:.3g}"
    if lo == 1:
        return f"as close as can be: every plant of this parentage is pure-breeding ({figure})"
    return f"{'related' if lo else 'perhaps related'} ({figure})"


def known_words(lo: float, hi: float, completeness: float | None) -> str:
    """How far back the ancestors are known."""
    generations = f"{lo:.3g}" if lo == hi else f"between {lo:.3g} and {hi:.3g}"
    words = f"{generations} generations, counting a half-known one as a half"
    if completeness is None:
        return f"{words}; how complete five generations are is open while parents are not settled"
    return f"{words}; of five generations {100 * completeness:.0f} % are known, both sides weighed together"
