"""What a sheet may be about, and under which headings a society might have written each thing."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Field:
    """One thing a column may hold. Aliases are headings in small letters, without signs."""

    key: str
    label: str
    aliases: tuple[str, ...] = ()
    needed: bool = False


@dataclass(frozen=True, slots=True)
class Kind:
    key: str
    label: str
    fields: tuple[Field, ...]
    # Words in a file's or sheet's name that speak for this kind.
    titles: tuple[str, ...] = ()

    def field(self, key: str) -> Field:
        return next(field for field in self.fields if field.key == key)


def _(key: str, label: str, aliases: str = "", *, needed: bool = False) -> Field:
    return Field(key, label, tuple(alias.strip() for alias in aliases.split("|") if alias.strip()), needed)


NUMBER = (
    "no|nr|number|old no|old number|acc no|acc nr|accession|accession no|accession number|plant no|plant number"
    "|our no|society no"
)
NOTES = _("notes", "notes", "remarks|remark|comments|comment|note|observations")
TAG = _(
    "label",
    "what the tag says",
    "tag reads|tag|label|label reads|label text|written on the tag|on the tag|tag says",
)
MEETING = _("meeting", "meeting", "at which meeting|at meeting|which meeting")

MEMBERS = Kind(
    "members",
    "members",
    (
        _("name", "name", "full name|member|member name|surname and name|who", needed=True),
        _("number", "membership number", "old no|member no|membership no|no|number|m no"),
        _("household", "household", "home|family|lives with|couple"),
        _("email", "e-mail", "email|mail|email address|e mail"),
        _("phone", "telephone", "tel|phone|telephone no|mobile"),
        _("address", "address", "postal address|street"),
        _("joined", "joined", "since|member since|in the society since|year joined"),
        _("office", "office held", "role|roles|office|offices|position"),
        _("appears", "wishes to appear", "appears|shown as|how to appear|privacy|may be named"),
        NOTES,
    ),
    ("member", "people"),
)
MEETINGS = Kind(
    "meetings",
    "meetings",
    (
        _("name", "meeting", "name|what|title|event", needed=True),
        _("date", "date", "held on|when|day|on", needed=True),
        _("place", "place", "where|venue|at|hall"),
    ),
    ("meeting",),
)
TRAIT_FIELDS = (
    _("shield_fronds", "shield fronds", "shields|shield|sterile fronds|base fronds"),
    _("fertile_fronds", "fertile fronds", "fertiles|long fronds|antlers"),
    _("forks", "forks", "forking|times forked"),
    _("breadth", "breadth", "frond breadth|width|broad or narrow"),
    _("spore_patches", "spore patches", "spores where|patches|sori"),
    _("blade", "blade", "blade divided|division of blade|fronds divided"),
    _("outline", "outline", "blade shape|shape"),
)
NAMES = Kind(
    "names",
    "names",
    (
        _(
            "name",
            "name",
            "name as we write it|full name|cultivar|cultivar name|plant name|variety name",
            needed=True,
        ),
        _("genus", "genus", ""),
        _("species", "species", "species epithet|sp"),
        _("author", "author", "authority"),
        _("raiser", "raised by", "raiser|breeder|hybridiser|found by|raised"),
        _("introduced", "introduced", "year|introduced when|date introduced|first shown|named in"),
        _("parents", "parents", "parentage|cross|seed parents|from what"),
        _("reproduction", "true from spores", "comes true|true from spores?|reproduction|spores true"),
        _("origin", "origin", "where from|history|came from"),
        *TRAIT_FIELDS,
        NOTES,
    ),
    ("name", "cultivar"),
)
PLANTS = Kind(
    "plants",
    "plants",
    (
        _("number", "the society’s old number", NUMBER),
        _("code", "code", "plant code|frondkeep code"),
        TAG,
        _(
            "thought",
            "thought to be",
            "believed to be|identified as|determination|is|probably|name|plant|our name",
        ),
        _("keeper", "kept by", "keeper|with|who has it|grower|held by|at"),
        _("from_whom", "from whom", "got from|source|from|donor|received from|obtained from"),
        _("acquired", "when it came", "when|date|date received|received|got when|acquired|year"),
        _("came", "how it came", "how acquired|how|type|how obtained|came as"),
        _("parent", "the plant it came from", "parent plant|parent|piece of|pup of|from plant|mother plant"),
        _("holds", "what the pot holds", "holds|how many|plants in pot|pot holds"),
        _("state", "state", "status|alive?|alive|condition now"),
        _("ended", "when it died or left", "gone when|died|date gone|lost when|left when"),
        _("last_seen", "last seen alive", "last seen|seen|checked on|last checked"),
        _("place", "growing place", "where at home|place|position|location|where"),
        _("mount", "mount", "mounted on|pot or board|grown on|container"),
        _("private", "private", "private?|hide|not shown|secret"),
        _("own_number", "the keeper’s own number", "own no|own number|my no|my number"),
        MEETING,
        NOTES,
    ),
    ("plant", "accession", "collection"),
)
PIECES = Kind(
    "pieces",
    "pups and pieces",
    (
        _("number", "the society’s old number", NUMBER),
        _("parent", "pup of", "piece of|parent|parent plant|divided from|taken from|from plant", needed=True),
        _("piece_kind", "kind of piece", "kind|type|what kind"),
        _("acquired", "taken when", "taken|when|date|date taken"),
        _("taken_by", "taken by", "by whom|by|divided by"),
        _("keeper", "given to", "now with|kept by|to|went to|keeper"),
        MEETING,
        TAG,
        NOTES,
    ),
    ("piece", "pup", "division", "divisions"),
)
SOWINGS = Kind(
    "sowings",
    "sowings",
    (
        _("number", "sowing number", "sowing no|no|number|pan no|s no"),
        _("sown", "sown", "sown when|date sown|when|date|sown on"),
        _("by", "sown by", "by|who|grower"),
        _("sources", "spores of", "spores from|source|sources|parents|whose spores|from", needed=True),
        _("medium", "medium", "sown on what|compost|sown in"),
        _("came_up", "what came up", "result|results|came up|germination"),
        NOTES,
    ),
    ("sowing", "spores"),
)
CROSSES = Kind(
    "crosses",
    "crosses",
    (
        _("number", "number", "no|nr|cross no|x no"),
        _("how", "how it came about", "how|kind|type|intended"),
        _("sowing", "sowing", "sowing no|pan|from sowing"),
        _("first", "one parent", "first parent|parent a|parent 1|parent", needed=True),
        _("second", "other parent", "second parent|parent b|parent 2", needed=True),
        _("egg", "egg parent", "egg|mother|female parent"),
        _("made", "when", "date|year|noticed when"),
        _("by", "by", "noticed by|made by|who"),
        _("result", "named", "became|result|hybrid|progeny|plant"),
        _("ground", "how it is known", "how known|ground|basis|evidence"),
        _("formerly", "formerly thought", "formerly|was thought|earlier opinion|before"),
        _("changed", "changed when", "changed|revised|when changed"),
        NOTES,
    ),
    ("cross", "hybrid"),
)

SCHEDULE = Kind(
    "schedule",
    "classes of a show",
    (
        _("number", "class number", "class no|class|no|number", needed=True),
        _("title", "title", "class title|what|description", needed=True),
        _("show", "show", "name of show|which show", needed=True),
        _("date", "date of the show", "date of show|show date|date|held on", needed=True),
        _("section", "section", "division"),
        _("stages", "what is staged", "staged|stage|exhibit"),
        _("genus", "genus", "genus wanted"),
        _("wants", "what may enter", "kind wanted|kind|wanted"),
        _("how_many", "plants to an entry", "how many|number of plants|plants"),
        _("closes", "entries close", "closing date|closes|entries by"),
    ),
    ("schedule", "classes"),
)
ENTRIES = Kind(
    "entries",
    "entries of a show",
    (
        _("number", "class number", "class no|class|in class", needed=True),
        _("exhibitor", "exhibitor", "who|shown by|name|entered by", needed=True),
        _("plant", "plant", "plants|what is shown|plant or plants|exhibit", needed=True),
        NOTES,
    ),
    ("entries", "entry"),
)

KINDS: dict[str, Kind] = {
    kind.key: kind for kind in (MEMBERS, MEETINGS, NAMES, PLANTS, PIECES, SOWINGS, CROSSES, SCHEDULE, ENTRIES)
}
