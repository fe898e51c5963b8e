"""The botanical names the society grows, with what tells them apart and the names they used to bear."""

TRAITS = {
    "shield fronds": ("ball", "basket", "ring"),
    "fertile fronds": ("erect", "arching", "hanging"),
    "forks": ("unforked", "two", "few", "many"),
    "breadth": ("narrow", "medium", "broad"),
    "spore patches": ("tips", "first fork", "middle", "on a spoon", "near the base", "below the tip"),
    "blade": ("strap", "once divided", "twice divided", "thrice divided"),
    "outline": ("lance", "triangular", "round"),
}

_STAGHORNS = """
alcicorne|ball, erect, few, narrow, tips
andinum|ring, hanging, many, narrow, middle
bifurcatum|basket, arching, few, narrow, tips
coronarium|ring, hanging, many, narrow, near the base
elephantotis|basket, hanging, unforked, broad, below the tip
ellisii|ball, erect, two, broad, below the tip
grande|basket, hanging, two, broad, first fork
hillii|ball, erect, few, broad, tips
holttumii|basket, hanging, two, broad, first fork
madagascariense|ball, arching, few, medium, tips
quadridichotomum|ball, hanging, many, medium, first fork
ridleyi|ball, erect, many, narrow, on a spoon
stemaria|basket, hanging, two, medium, first fork
superbum|basket, hanging, many, broad, first fork
veitchii|basket, erect, few, narrow, tips
wallichii|basket, hanging, two, broad, first fork
wandae|basket, hanging, two, broad, first fork
willinckii|basket, hanging, many, narrow, tips
"""

_OTHERS = """
Adiantum capillus-veneris|twice divided, triangular
Adiantum raddianum|thrice divided, triangular
Asplenium nidus|strap, round
Asplenium scolopendrium|strap, lance
Asplenium trichomanes|once divided, lance
Athyrium filix-femina|twice divided, lance
Athyrium niponicum|twice divided, triangular
Cyrtomium falcatum|once divided, lance
Davallia fejeensis|thrice divided, triangular
Davallia griffithiana|thrice divided, triangular
Drynaria quercifolia|once divided, lance
Dryopteris affinis|once divided, lance
Dryopteris filix-mas|once divided, lance
Goniophlebium subauriculatum|once divided, lance
Microsorum musifolium|strap, lance
Nephrolepis cordifolia|once divided, lance
Nephrolepis exaltata|once divided, lance
Phlebodium aureum|once divided, round
Polypodium cambricum|once divided, triangular
Polypodium vulgare|once divided, lance
Pteris nipponica|once divided, triangular
Pyrrosia lingua|strap, lance
Sphaeropteris cooperi|thrice divided, triangular
"""

SOLITARY = ("superbum", "grande", "holttumii", "wandae")
NEVER_DIVIDED = (*SOLITARY, "wallichii", "ridleyi", "cooperi")

# What labels still say: accepted name -> the names it went by.
OLD_NAMES = {
    "Platycerium elephantotis": ("Platycerium angolense", "P. velutinum"),
    "Platycerium alcicorne": ("Platycerium vassei",),
    "Platycerium stemaria": ("P. aethiopicum",),
    "Platycerium bifurcatum": ("P. angustatum",),
    "Platycerium coronarium": ("Platycerium biforme",),
    "Platycerium willinckii": ("P. sumbawense", "P. bifurcatum subsp. willinckii"),
    "Platycerium veitchii": ("P. bifurcatum subsp. veitchii",),
    "Platycerium hillii": ("P. bifurcatum var. hillii",),
    "Adiantum raddianum": ("Adiantum cuneatum",),
    "Asplenium scolopendrium": ("Phyllitis scolopendrium", "Scolopendrium vulgare"),
    "Athyrium niponicum": ("Athyrium goeringianum",),
    "Cyrtomium falcatum": ("Polystichum falcatum",),
    "Davallia griffithiana": ("Humata griffithiana",),
    "Dryopteris affinis": ("Dryopteris pseudomas",),
    "Goniophlebium subauriculatum": ("Polypodium subauriculatum",),
    "Microsorum musifolium": ("Polypodium musifolium",),
    "Nephrolepis cordifolia": ("Nephrolepis tuberosa",),
    "Phlebodium aureum": ("Polypodium aureum",),
    "Polypodium cambricum": ("Polypodium australe",),
    "Pteris nipponica": ("Pteris cretica var. albolineata",),
    "Sphaeropteris cooperi": ("Cyathea cooperi", "Alsophila cooperi"),
}

ACCEPTED = {old: name for name, olds in OLD_NAMES.items() for old in olds}


def traits_from(words: str) -> dict[str, str]:
    """Read trait states separated by commas; every state belongs to one trait only."""
    states = [word.strip() for word in words.split(",") if word.strip()]
    return {trait: state for state in states for trait, known in TRAITS.items() if state in known}


def _read(table: str, genus: str = "") -> dict[str, dict[str, str]]:
    rows = (line.split("|") for line in table.strip().splitlines())
    return {f"{genus} {name}".strip(): traits_from(words) for name, words in rows}


SPECIES = _read(_STAGHORNS, "Platycerium") | _read(_OTHERS)
