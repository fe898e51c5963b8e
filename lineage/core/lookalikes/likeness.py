"""How alike two names are, with the reasons."""

from dataclasses import dataclass

from rapidfuzz.distance import OSA

from .pairing import pair_words
from .prepared import Prepared, prepare
from .reasons import Reason, reason
from .vocabulary import Vocabulary
from .words import Tables, Word, tables

LEVELS = ("same", "near", "sounds alike", "lexicon", "far")
NEAR = 0.6
"""From this score on two names count as near; below it as far."""

_ORDER = 0.975
_JOINED = 0.985
_GROUP_WORD = 0.93
_OTHER_GENUS = 0.12
_MOVED_GENUS = 0.85
_OTHER_SPECIES = 0.985
_FROM_SPORES = 0.3
_UNMATCHED = {"title": 0.3, "given": 0.3, "number": 0.15, "joining": 0.93, "initial": 0.55, "place": 0.3}
_UNMATCHED_WORD = 0.2
_NEAR_BY = {"slip", "joined", "group-word", "initial", "order", "spelling", "plural"}
_LEXICON = {"translation", "nickname", "abbreviation", "moved-genus"}


@dataclass(frozen=True, slots=True)
class Likeness:
    """``score`` 0..1; ``level`` one of LEVELS, the levels of the clue *spelling*; ``reasons`` weightiest first."""

    score: float
    level: str
    reasons: tuple[Reason, ...]

    @property
    def guards(self) -> tuple[Reason, ...]:
        """The reasons that hold the two names apart."""
        return tuple(found for found in self.reasons if found.is_guard)


def compare_names(
    a: str,
    b: str,
    *,
    genus_a: str | None = None,
    genus_b: str | None = None,
    vocabulary: Vocabulary | None = None,
) -> Likeness:
    """How alike two names are as written. Symmetric; never raises; 1.0 only for equal folded forms.

    A genus written in a name outranks ``genus_a`` and ``genus_b``; without any genus none is compared.

    >>> compare_names("Silver Tassel", "silver-tassel").score
    1.0
    >>> [str(why) for why in compare_names("Wavy Fan No. 2", "Wavy Fan III").guards]
    ['The numbers differ.']
    """
    vocabulary = vocabulary or Vocabulary.default()
    return compare_prepared(prepare(a, genus_a, vocabulary), prepare(b, genus_b, vocabulary), vocabulary)


def compare_prepared(a: Prepared, b: Prepared, vocabulary: Vocabulary) -> Likeness:
    if (b.folded, b.reading.text, b.reading.genus) < (a.folded, a.reading.text, a.reading.genus):
        a, b = b, a
    known = tables(vocabulary)
    score, reasons = max(
        (_compare_words(left, right, known) for left in a.versions for right in b.versions),
        key=lambda found: found[0],
    )
    for guard in _whole_name_reasons(a, b):
        score *= guard.factor
        reasons.append(guard)
    if a.folded != b.folded:
        score = min(score, 0.995)
    return Likeness(
        round(score, 4), _level(score, reasons), tuple(sorted(reasons, key=lambda why: why.factor))
    )


def _level(score: float, reasons: list[Reason]) -> str:
    keys = {why.key for why in reasons}
    if score < NEAR:
        return "far"
    if keys & _NEAR_BY or any(why.is_guard for why in reasons):
        return "near"
    if "sound" in keys:
        return "sounds alike"
    return "lexicon" if keys & _LEXICON else "same"


def spelling_level(likeness: Likeness) -> str:
    """The level of the clue *spelling* that a likeness speaks for."""
    return likeness.level


def _compare_words(
    left: tuple[Word, ...], right: tuple[Word, ...], known: Tables
) -> tuple[float, list[Reason]]:
    if not left or not right:
        return (1.0, [reason("same")]) if left == right else (0.0, [reason("nothing", factor=0.0)])
    aligned = _align(left, right, known)
    if len(left) == len(right) and len(left) == 1:
        return aligned
    joined = _compare_joined(left, right, known)
    return max(aligned, joined, key=lambda found: found[0]) if joined else aligned


def _align(left: tuple[Word, ...], right: tuple[Word, ...], known: Tables) -> tuple[float, list[Reason]]:
    """Each word with its best partner, best pairs first; words left over cost."""
    scored = sorted(
        (
            (pair_words(x, y, known), -abs(i - j), i, j)
            for i, x in enumerate(left)
            for j, y in enumerate(right)
        ),
        key=lambda row: (row[0][0], row[1], -row[2]),
        reverse=True,
    )
    used_left: dict[int, int] = {}
    used_right: set[int] = set()
    score, reasons = 1.0, []
    for (value, key), _, i, j in scored:
        if i in used_left or j in used_right:
            continue
        used_left[i] = j
        used_right.add(j)
        score *= value
        if key != "same":
            reasons.append(reason(key, left[i].text, right[j].text, factor=value))
    if any(used_left[i] > used_left[k] for i in used_left for k in used_left if i < k):
        score *= _ORDER
        reasons.append(reason("order", factor=_ORDER))
    over = [left[i] for i in range(len(left)) if i not in used_left]
    over += [right[j] for j in range(len(right)) if j not in used_right]
    longer = left if len(left) > len(right) else right
    for word in over:
        cost = _cost_of_unmatched(word, longer, len(over))
        score *= cost.factor
        reasons.append(cost)
    return score, reasons or [reason("same")]


def _cost_of_unmatched(word: Word, name: tuple[Word, ...], count: int) -> Reason:
    if is_group_word(word, name) and count == 1:
        return reason("group-word", word.text, factor=_GROUP_WORD)
    key = "number" if word.kind == "number" else "contains"
    return reason(key, word.text, factor=_UNMATCHED.get(word.kind, _UNMATCHED_WORD))


def is_group_word(word: Word, name: tuple[Word, ...]) -> bool:
    """A descriptive Latin word before a name of at least two words that is not Latin itself."""
    return (
        word.kind == "latin"
        and word is name[0]
        and len(name) >= 3
        and all(w.kind != "latin" for w in name[1:])
    )


def _compare_joined(
    left: tuple[Word, ...], right: tuple[Word, ...], known: Tables
) -> tuple[float, list[Reason]] | None:
    """Names that differ in where the gaps stand."""
    if _numbers(left) != _numbers(right):
        return None
    a, b = ("".join(word.text for word in name if word.kind != "number") for name in (left, right))
    if not a or not b:
        return None
    if a == b:
        return _JOINED, [reason("joined", factor=_JOINED)]
    if len(left) == len(right) or abs(len(a) - len(b)) > 2 or min(len(a), len(b)) < 6:
        return None
    distance = OSA.distance(a, b, score_cutoff=2)
    if distance > 2:
        return None
    value = 0.86 if distance == 1 else 0.7
    return value, [reason("joined", factor=_JOINED), reason("slip", a, b, factor=value)]


def _numbers(words: tuple[Word, ...]) -> list[str]:
    return sorted(word.form for word in words if word.kind == "number")


def _whole_name_reasons(a: Prepared, b: Prepared) -> list[Reason]:
    found = []
    if a.possible_genera and b.possible_genera and a.standing[0] != b.standing[0]:
        named = sorted((a.reading.genus, b.reading.genus))
        if a.possible_genera & b.possible_genera:
            found.append(reason("moved-genus", *named, factor=_MOVED_GENUS))
        else:
            found.append(reason("genus", *named, factor=_OTHER_GENUS))
    elif (
        a.standing[1]
        and b.standing[1]
        and a.standing[1] != b.standing[1]
        and a.reading.epithet
        and b.reading.epithet
    ):
        found.append(
            reason("species", *sorted((a.reading.species, b.reading.species)), factor=_OTHER_SPECIES)
        )
    if a.reading.spores != b.reading.spores:
        found.append(reason("spores", factor=_FROM_SPORES))
    return found
