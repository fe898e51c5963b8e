"""How alike two names are, with the reasons."""

from dataclasses import dataclass

from rapidfuzz.distance import OSA

from .endings import stem
from .pairing import pair_words
from .prepared import Prepared, prepare
from .reasons import Reason, reason
from .vocabulary import Vocabulary
from .words import Tables, Word, tables

LEVELS = ("same", "near", "sounds alike", "lexicon", "far")
NEAR = 0.75
"""From this score on two names count as near; below it as far."""

_LONE_INITIAL = 0.1
_DIFFERENT_PLACE = 0.3
_AGREEING = 0.5
_ORDER = 0.975
_JOINED = 0.985
_GROUP_WORD = 0.955
_OTHER_GENUS = 0.12
_MOVED_GENUS = 0.85
_OTHER_SPECIES = 0.985
_COMMON_WORD = 0.88
_FROM_SPORES = 0.3
_UNMATCHED = {"title": 0.3, "given": 0.3, "number": 0.15, "joining": 0.93, "initial": 0.55, "place": 0.3}
_UNMATCHED_WORD = 0.2
_BY_SPELLING = {"slip", "joined", "group-word", "initial", "order", "spelling", "plural"}
_LEXICON = {"translation", "nickname", "moved-genus"}


Words = tuple[Word, ...]


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
    for guard in _whole_name_reasons(a, b, known):
        score *= guard.factor
        reasons.append(guard)
    if a.folded != b.folded:
        score = min(score, 0.995)
    level = _level(score, reasons, folded_alike=a.folded == b.folded)
    return Likeness(round(score, 4), level, tuple(sorted(reasons, key=lambda why: why.factor)))


def _level(score: float, reasons: list[Reason], *, folded_alike: bool) -> str:
    keys = {why.key for why in reasons}
    if score < NEAR:
        return "far"
    if keys & _BY_SPELLING:
        return "near"
    if "sound" in keys:
        return "sounds alike"
    if keys & _LEXICON:
        return "lexicon"
    return "same" if folded_alike else "near"


def spelling_level(likeness: Likeness) -> str:
    """The level of the clue *spelling* that a likeness speaks for."""
    return likeness.level


def _compare_words(left: Words, right: Words, known: Tables) -> tuple[float, list[Reason]]:
    if not left or not right:
        return (1.0, [reason("same")]) if left == right else (0.0, [reason("nothing", factor=0.0)])
    aligned = _align(left, right, known)
    if len(left) == len(right) and len(left) == 1:
        return _lone_initial(left[0], right[0]) or aligned
    joined = _compare_joined(left, right, known)
    return max(aligned, joined, key=lambda found: found[0]) if joined else aligned


def _lone_initial(left: Word, right: Word) -> tuple[float, list[Reason]] | None:
    """A single letter is too little to stand for a whole name."""
    if left.text == right.text or "initial" not in (left.kind, right.kind):
        return None
    return _LONE_INITIAL, [reason("different-word", left.text, right.text, factor=_LONE_INITIAL)]


def _align(left: Words, right: Words, known: Tables) -> tuple[float, list[Reason]]:
    """Each word with its best partner, best pairs first; words left over cost."""
    partners = _partners(left, right, known)
    agreeing = [i for i, j in partners if _agree(left[i], right[j], known)]
    score, reasons = 1.0, []
    for i, j in partners:
        value, key = pair_words(left[i], right[j], known, supported=any(at != i for at in agreeing))
        if key == "initial" and (i or j):
            value = min(value, _DIFFERENT_PLACE)
        score *= value
        if key != "same":
            reasons.append(reason(key, left[i].text, right[j].text, factor=value))
    if any(j > other for i, j in partners for at, other in partners if i < at):
        score *= _ORDER
        reasons.append(reason("order", factor=_ORDER))
    for cost in _left_over(left, right, partners):
        score *= cost.factor
        reasons.append(cost)
    return score, reasons or [reason("same")]


def _partners(left: Words, right: Words, known: Tables) -> list[tuple[int, int]]:
    """Places of the words that stand for each other; ties go to words in like places."""
    scored = sorted(
        (
            (-pair_words(x, y, known)[0], abs(i - j), i, j)
            for i, x in enumerate(left)
            for j, y in enumerate(right)
        ),
    )
    found: dict[int, int] = {}
    for _, _, i, j in scored:
        if i not in found and j not in found.values():
            found[i] = j
    return list(found.items())


def _agree(left: Word, right: Word, known: Tables) -> bool:
    """Do two words agree well enough to make a slip in another likelier?"""
    return (
        left.kind not in ("joining", "initial", "filler") and pair_words(left, right, known)[0] >= _AGREEING
    )


def _left_over(left: Words, right: Words, partners: list[tuple[int, int]]) -> list[Reason]:
    over = [word for at, word in enumerate(left) if at not in {i for i, _ in partners}]
    over += [word for at, word in enumerate(right) if at not in {j for _, j in partners}]
    longer = left if len(left) > len(right) else right
    return [_cost_of_unmatched(word, longer, len(over)) for word in over]


def _cost_of_unmatched(word: Word, name: Words, count: int) -> Reason:
    if is_group_word(word, name) and count == 1:
        return reason("group-word", word.text, factor=_GROUP_WORD)
    key = "number" if word.kind == "number" else "contains"
    return reason(key, word.text, factor=_UNMATCHED.get(word.kind, _UNMATCHED_WORD))


def is_group_word(word: Word, name: Words) -> bool:
    """A descriptive Latin word before a name of at least two words that is not Latin itself."""
    return (
        word.kind == "latin"
        and word is name[0]
        and len(name) >= 3
        and all(w.kind != "latin" for w in name[1:])
    )


def _compare_joined(left: Words, right: Words, known: Tables) -> tuple[float, list[Reason]] | None:
    """Names that differ in where the gaps stand."""
    if _numbers(left) != _numbers(right):
        return None
    a, b = ("".join(word.text for word in name if word.kind != "number") for name in (left, right))
    if not a or not b:
        return None
    if a == b:
        return _JOINED, [reason("joined", factor=_JOINED)]
    kinds = {word.kind for word in (*left, *right)}
    if len(left) == len(right) or abs(len(a) - len(b)) > 2 or min(len(a), len(b)) < 6 or "initial" in kinds:
        return None
    distance = OSA.distance(a, b, score_cutoff=2)
    if distance > 2:
        return None
    value = 0.86 if distance == 1 else 0.7
    return value, [reason("joined", factor=_JOINED), reason("slip", a, b, factor=value)]


def _numbers(words: Words) -> list[str]:
    return sorted(word.form for word in words if word.kind == "number")


def _whole_name_reasons(a: Prepared, b: Prepared, known: Tables) -> list[Reason]:
    found = []
    if a.possible_genera and b.possible_genera and a.standing[0] != b.standing[0]:
        named = sorted((a.reading.genus, b.reading.genus))
        if a.possible_genera & b.possible_genera:
            found.append(reason("moved-genus", *named, factor=_MOVED_GENUS))
        else:
            found.append(reason("genus", *named, factor=_OTHER_GENUS))
    elif _under_two_species(a, b):
        named = sorted((a.reading.species, b.reading.species))
        found.append(reason("species", *named, factor=_OTHER_SPECIES))
        if _is_common(a, known) and _is_common(b, known):
            found.append(reason("common-word", a.versions[0][0].text, factor=_COMMON_WORD))
    if a.reading.spores != b.reading.spores:
        found.append(reason("spores", factor=_FROM_SPORES))
    return found


def _under_two_species(a: Prepared, b: Prepared) -> bool:
    both_known = a.standing[1] and b.standing[1] and a.reading.epithet and b.reading.epithet
    return bool(both_known) and a.standing[1] != b.standing[1]


def _is_common(name: Prepared, known: Tables) -> bool:
    """Is it one descriptive word that many plants bear, like Cristata?"""
    words = name.versions[0]
    return len(words) == 1 and (words[0].meaning is not None or stem(words[0].text) in known.latin_stems)
