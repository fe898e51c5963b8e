"""What is written on tags and in the column "believed to be"."""

from demo_data.chance import Chance
from demo_data.cultivars import Cultivar
from demo_data.plants import Plant, Sowing
from demo_data.species import OLD_NAMES

MISSPELT_GENUS = {"Platycerium": "Platycerum", "Nephrolepis": "Nephrolepsis", "Microsorum": "Microsorium",
                  "Asplenium": "Aspleneum", "Athyrium": "Athyrum", "Davallia": "Davalia"}  # fmt: skip


def slip(text: str, chance: Chance) -> str:
    """Return the text with one slip of the pen in its longest word, never in the first letter."""
    word = max(text.split(), key=len)
    if len(word) < 5:
        return text
    at = chance.between(1, len(word) - 2)
    kind = chance.between(0, 2)
    if kind == 0:
        wrong = word[:at] + word[at + 1] + word[at] + word[at + 2 :]
    elif kind == 1:
        wrong = word[:at] + word[at + 1 :]
    else:
        wrong = word[:at] + word[at] + word[at:]
    return text.replace(word, wrong, 1)


def write_tags(plants: list[Plant], chance: Chance) -> None:
    """Give every plant that has none yet its tag and what it is believed to be."""
    for plant in plants:
        if plant.tag or plant.believed:
            continue
        if plant.parent and plant.seedling:
            plant.tag, plant.believed = plant.parent.tag, plant.parent.believed
        elif plant.sowing:
            _sporeling(plant, plant.sowing, chance)
        elif isinstance(plant.kind, Cultivar):
            _cultivar(plant, plant.kind, chance)
        elif plant.kind:
            _species(plant, chance)


def cultivar_tag(kind: Cultivar, chance: Chance) -> str:
    """Return a tag that says the right name in one of the ways people write."""
    genus, epithet = kind.genus, kind.epithet
    return chance.one_of(
        (
            f"{genus} '{epithet}'",
            f"{genus[0]}. '{epithet}'",
            epithet,
            epithet.upper(),
            f"{genus} {epithet}",
            f"'{epithet}'",
            f"{genus[:5].lower()}. {epithet.lower()}",
            f"{genus} cv. {epithet}",
        )
    )


def _cultivar(plant: Plant, kind: Cultivar, chance: Chance) -> None:
    plant.believed = kind.name
    draw = chance.between(0, 99)
    if draw < 9:
        plant.tag = slip(cultivar_tag(kind, chance), chance)
    elif draw < 13 and kind.genus in MISSPELT_GENUS:
        plant.tag = f"{MISSPELT_GENUS[kind.genus]} '{kind.epithet}'"
    elif draw < 20:
        plant.tag = chance.one_of(("", "tag gone", "no tag"))
    elif draw < 50:  # nobody thought about it twice: the tag is all there is, and it is right
        plant.tag, plant.believed = f"{kind.genus} '{kind.epithet}'", ""
    else:
        plant.tag = cultivar_tag(kind, chance)


def _species(plant: Plant, chance: Chance) -> None:
    genus, epithet = plant.species.split()
    if plant.parent:  # whoever doubted the parent doubts the piece
        plant.tag, plant.believed = f"{genus[0]}. {epithet}", plant.parent.believed or plant.species
        return
    old = OLD_NAMES.get(plant.species, ())
    plant.believed = plant.species
    plant.tag = chance.one_of((plant.species, f"{genus[0]}. {epithet}", epithet, plant.species.lower()))
    draw = chance.between(0, 99)
    if old and draw < 30:
        plant.tag, plant.believed = chance.one_of(old), ""
    elif draw < 40:
        plant.tag = slip(plant.tag, chance)
    elif draw < 56:
        plant.believed = chance.one_of(
            (
                f"{genus} cf. {epithet}",
                f"{genus} aff. {epithet}",
                f"{genus} {epithet} ?",
                f"? {genus} {epithet}",
            )
        )
    elif draw < 70:
        plant.tag, plant.believed = plant.species, ""


def _sporeling(plant: Plant, sowing: Sowing, chance: Chance) -> None:
    plant.tag = sowing.number if chance.happens(0.6) else f"{sowing.number} no. {chance.between(1, 9)}"
    if sowing.mixed or not sowing.sources:
        plant.believed = chance.one_of(("", "", "unknown", _formula(sowing)))
        return
    source = sowing.sources[0]
    if not isinstance(source.kind, Cultivar):
        plant.believed = source.species
    elif source.kind.comes_true == "s":
        plant.believed = source.kind.name
    else:
        plant.believed = f"{source.genus} ex '{source.epithet}'"


def _formula(sowing: Sowing) -> str:
    """Return a doubtful hybrid formula of the first two species sown, in alphabetical order."""
    species = sorted({source.species for source in sowing.sources})[:2]
    if len(species) < 2:
        return "unknown"
    genus, epithet = species[1].split()
    return f"{species[0]} × {genus[0]}. {epithet} ?"
