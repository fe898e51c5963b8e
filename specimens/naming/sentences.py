"""The one sentence that says what a record is.

It is the page's lead, the picture's description, the paper's alternative text, the e-mail's first line and the
echo after saving, so that all of them say the same.
"""

from collections.abc import Iterable
from textwrap import shorten

from specimens.naming.dates import say_when
from specimens.naming.facts import HIDDEN_PLANT, CrossFacts, PlantFacts, SowingFacts
from specimens.naming.partial_date import PartialDate

__all__ = [
    "HIDDEN_PLANT",
    "CrossFacts",
    "PlantFacts",
    "SowingFacts",
    "cross_sentence",
    "plant_sentence",
    "sowing_sentence",
]

AS_SOWN = "as sown — stray spores are common"
NOT_SETTLED = "sown together, not settled"
GROUNDS = {
    "label": "from its tag",
    "looks": "by its looks",
    "compared": "compared with a known plant",
    "dna": "by DNA",
}
_DETERMINED = {
    "hybrid": "found to be hybrids",
    "self": "found to be from spores of one plant",
    "apogamous": "same as its parent, though from spores",
}
_HOLDS = {
    "several": "several plants of one sowing",
    "kinds": "several kinds together",
    "not known": "what it holds is not known",
}
_LABEL_SHOWN = 80


def plant_sentence(facts: PlantFacts) -> str:
    """The sentence about a plant; a second short one follows if it no longer grows.

    >>> plant_sentence(PlantFacts(came="piece", piece_kind="pup", parent_code="2019-0088-B", taken_by="a member",
    ...                           thought_name="Platycerium ‘Silver Tassel’", ground="label"))
    'Pup of 2019-0088-B, taken by a member; thought to be Platycerium ‘Silver Tassel’, from its tag.'
    """
    clauses = [_origin(facts), _thought(facts), _HOLDS.get(facts.holds, ""), _label(facts)]
    return _sentence(facts.code, clauses) + _end(facts)


def sowing_sentence(facts: SowingFacts) -> str:
    """The sentence about a sowing.

    >>> sowing_sentence(SowingFacts(sources=("2019-0088-B", HIDDEN_PLANT), sown_by="a member"))
    'Spores of 2019-0088-B and a plant not shown, sown by a member; sown together, not settled.'
    """
    packet = f"from packet {facts.packet_code}" if facts.packet_code else ""
    by = _by("sown", facts.sown_by, facts.date)
    pans = f"in {facts.pans} pans" if facts.pans > 1 else ""
    start = _with_commas(f"Spores of {_listed(facts.sources) or 'plants not known'}", packet, by, pans)
    unsettled = NOT_SETTLED if len(facts.sources) > 1 else AS_SOWN
    stage = f"{facts.stage} {say_when(facts.stage_when)}".strip() if facts.stage else ""
    return _sentence(facts.code, [start, _DETERMINED.get(facts.determined, unsettled), stage])


def cross_sentence(facts: CrossFacts) -> str:
    """The sentence about a cross.

    >>> cross_sentence(CrossFacts(parents=("2019-0088-B", "2020-0007-A"), egg_parent=0, made_by="a member"))
    'Cross of 2019-0088-B and 2020-0007-A, made by a member; the egg parent is 2019-0088-B.'
    """
    parents = [parent or "a parent not known" for parent in facts.parents]
    verb = {"intended": "made", "noticed": "noticed", "reported": "reported"}[facts.how]
    chance = "come up by chance" if facts.how == "noticed" else ""
    start = _with_commas(
        f"Cross of {_listed(parents) or 'parents not known'}",
        chance,
        _by(verb, facts.made_by, facts.date),
        facts.method,
        f"sown as {_listed(facts.sowing_codes)}" if facts.sowing_codes else "",
    )
    egg = f"the egg parent is {parents[facts.egg_parent]}" if facts.egg_parent is not None else ""
    tally = ", ".join(f"{count} {what}" for what, count in facts.tally)
    return _sentence(facts.code, [start, egg, f"what came up: {tally}" if tally else ""])


def _origin(facts: PlantFacts) -> str:
    how = {"piece": _piece, "sowing": _from_spores, "outside": _outside, "wild": _wild}.get(facts.came)
    given = f"from {facts.from_whom}" if facts.from_whom else ""
    meeting = f"at {facts.meeting}" if facts.meeting else ""
    giving = " ".join(part for part in (given, meeting) if part)
    when = say_when(facts.date)
    if how is None:
        known = " ".join(part for part in (giving, when) if part)
        return f"Came {known}, how is not known" if known else "How it came is not known"
    return f"{_with_commas(*how(facts), giving)} {when}".strip()


def _piece(facts: PlantFacts) -> list[str]:
    kind = (facts.piece_kind or "piece").strip()
    hidden = HIDDEN_PLANT if facts.parent_hidden else "a plant not on record"
    parent = facts.parent_code or facts.parent_words or hidden
    given = facts.from_whom or facts.meeting
    taken = (
        f"taken by {facts.taken_by}"
        if facts.taken_by
        else "taken"
        if facts.date.is_known and not given
        else ""
    )
    return [
        f"{kind[:1].upper()}{kind[1:]} of {parent}",
        "changed from it (a sport)" if facts.sport else "",
        taken,
    ]


def _from_spores(facts: PlantFacts) -> list[str]:
    spores = f"From spores of {_listed(facts.sowing_sources)}" if facts.sowing_sources else "From spores"
    sowing = f"sowing {facts.sowing_code}" if facts.sowing_code else ""
    return [spores, sowing, f"pricked out by {facts.taken_by}" if facts.taken_by else ""]


def _outside(facts: PlantFacts) -> list[str]:
    return ["Bought or given", f"a piece of {facts.parent_words}" if facts.parent_words else ""]


def _wild(facts: PlantFacts) -> list[str]:
    return [f"Collected wild by {facts.taken_by}" if facts.taken_by else "Collected wild"]


def _thought(facts: PlantFacts) -> str:
    if not facts.thought_name:
        return "not named yet"
    said = {
        "": f"thought to be {facts.thought_name}",
        "cf.": f"probably {facts.thought_name}",
        "aff.": f"close to {facts.thought_name}, but different",
        "?": f"thought to be {facts.thought_name}, not sure",
    }[facts.qualifier]
    unchecked = " (not yet checked)" if facts.not_yet_checked else ""
    ground = GROUNDS.get(facts.ground, facts.ground)
    return _with_commas(f"{said}{unchecked}", ground, AS_SOWN if facts.as_sown else "")


def _label(facts: PlantFacts) -> str:
    """What the tag says, unless it says just the name, whole or with its genus cut short or left out."""
    if not facts.label_text or _letters(facts.label_text) in _ways_to_write(facts.thought_name):
        return ""
    if _letters(facts.label_text) == "notag":
        return "it bears no tag"
    return f"the tag says “{shorten(facts.label_text, _LABEL_SHOWN, placeholder=' …')}”"


def _ways_to_write(name: str) -> set[str]:
    genus, _, rest = name.partition(" ")
    return {_letters(name), _letters(genus[:1] + rest), _letters(rest)}


def _letters(text: str) -> str:
    return "".join(each for each in text.casefold() if each.isalnum())


def _end(facts: PlantFacts) -> str:
    said = {
        "dead": "It died",
        "left": "It left the society",
        "lost": "It cannot be found",
        "stolen": "It was stolen",
        "mistake": "This was entered by mistake",
    }.get(facts.state)
    if not said:
        return ""
    # "Cannot be found" and "by mistake" are no events, so a date beside them would mislead.
    when = "" if facts.state in ("lost", "mistake") else say_when(facts.state_when)
    return f" {said} {when}".rstrip() + "."


def _by(verb: str, who: str, date: PartialDate) -> str:
    if not who and not date.is_known:
        return ""
    return " ".join(part for part in (verb, f"by {who}" if who else "", say_when(date)) if part)


def _sentence(code: str, clauses: Iterable[str]) -> str:
    said = "; ".join(clause for clause in clauses if clause)
    return f"{code}: {said[:1].lower()}{said[1:]}." if code else f"{said}."


def _with_commas(*parts: str) -> str:
    return ", ".join(part for part in parts if part)


def _listed(items: Iterable[str]) -> str:
    *first, last = [*items] or [""]
    return f"{', '.join(first)} and {last}" if first else last
