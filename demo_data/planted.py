"""The answer key: which alike-looking names are one plant, and which are two."""

from demo_data.spreadsheets import Row

# first | second | genus both stand in today (else written out) | 1 same, 0 different | kind | why
_PAIRS = """
Kettle Steam|Kettel Steam|Platycerium|1|slip|two letters changed places on a tag
Copper Lamplight|Copperlamplight|Platycerium|1|run-on|a nursery list ran the words together
Hilda's Washday|Hilda Washday|Platycerium|1|possessive|the 's was lost
Mount Marrowmere|Mt. Marrowmere|Platycerium|1|abbreviation|Mount shortened
Night Ferry No. 2|Night Ferry II|Platycerium|1|numeral|the number written in Roman
Crème Brocade|Creme Brocade|Platycerium|1|accent|the accent was lost
Tidewrack|Tidewrack Form|Platycerium|1|filler|a nursery's tag added a word
Old Tin Roof|Grandmother's Apron|Platycerium|1|clone|a recorded pup was named anew; same parents
Chapel Bell|Thursday's Find|Platycerium|1|clone|a division lost its tag; same parents, raiser, year
Quarry Mist|Polypodium 'Quarry Mist'|Phlebodium|1|genus moved|Polypodium aureum is Phlebodium aureum
Golden Teakettle|Tetera Dorada|Nephrolepis|1|translation|the raiser's own Spanish for it
Ramosum Harthollow|Harthollow Ramosum|Asplenium|1|word order|an old list put the place first
Plumula Velata|Plumulum Velatum|Athyrium|1|Latin endings|another gender
Fogbank|Plumosum Fogbank|Polypodium|1|Group lead|the Group written into the name
Whispering Gallery|Wispering Galery|Adiantum|1|slip|two letters dropped
Phantom Quay|Fantom Key|Davallia|1|sound|written down by ear
Thornwick|Thornwickii|Dryopteris|1|Latin endings|a surname made Latin
Paper Lantern|Paper Lanterns|Nephrolepis|1|plural|one lantern became several
Saint Oswin|St. Oswin|Asplenium|1|abbreviation|Saint shortened
Green Bonnet|Veranda Queen|Adiantum|1|parents|same parent, raiser and year; one plant bears both names
Harbour Lantern|Harbour Lanthorn|Platycerium|0|near|other parents, another raiser
Silver Ratchet|Golden Ratchet|Platycerium|0|opposite word|other parents, other shield fronds
Tarn Number 3|Tarn Number 8|Platycerium|0|number|two sisters: ring and hanging, basket and erect
Ada Thornwick|Hollis Thornwick|Platycerium|0|person|named for two people; other parents
Bellwether|Bellweather|Platycerium|0|near|other parents, raiser and shield fronds
Cristata Millrace|Cristata Angustata Millrace|Nephrolepis|0|one contains the other|another species, other blade
Crispum Oxlode|Crispum Oxlade|Asplenium|0|near|found in two places; other outline
Narrow Gauge|Broad Gauge|Athyrium|0|opposite word|other outline
Pewter Thimble|Pewter Thistle|Adiantum|0|near|another species, other parents
Lady Quagmyre|Lord Quagmyre|Dryopteris|0|title|another species; other outline
"""

HEADINGS = ["name_a", "name_b", "genus", "same", "kind", "why"]


def planted_pairs() -> list[list[str]]:
    """The planted pairs as rows of the answer key, without its headings."""
    pairs = []
    for line in _PAIRS.strip().splitlines():
        first, second, genus, *rest = line.split("|")
        written_out = second if second.endswith("'") else f"{genus} '{second}'"
        pairs.append([f"{genus} '{first}'", written_out, genus, *rest])
    return pairs


def planted_rows() -> list[Row]:
    """The answer key with its headings."""
    return [HEADINGS, *planted_pairs()]
