"""Writing the rows of a plants' list."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from frondkeep.desk.importing.phrases import SPORT, Descent
from frondkeep.desk.importing.rows import PlannedRow, Ref, short
from frondkeep.desk.importing.subjects.origins import named
from frondkeep.desk.importing.values import plain
from frondkeep.society.models import Keeper
from specimens.models import Came, Name, Specimen, SporeSowing
from specimens.services.many_names import NewClaim, claim_parentage_of_many
from specimens.services.many_plants import NewPlant, NewSowing, log_specimens, record_sowings
from specimens.services.names import edit_name
from specimens.services.sowings import Source
from specimens.services.specimens import PieceOf

if TYPE_CHECKING:
    from frondkeep.desk.importing.writing import Writing

Named = tuple[Name | None, str, str]


def write(writing: Writing, rows: list[PlannedRow]) -> None:
    """Sowings of their own first, for plants from spores that name none; then all plants at once."""
    names = {id(row): named(writing, row.values["thought"], inherits_from(writing, row)) for row in rows}
    sowings = sow_their_own(writing, rows, names)
    plants = [new_plant(writing, row, names[id(row)], sowings.get(id(row))) for row in rows]
    for row, plant in zip(rows, log_specimens(plants, by=writing.by), strict=True):
        writing.keep(row, plant)


def inherits_from(writing: Writing, row: PlannedRow) -> Specimen | None:
    """A piece whose tag says nothing bears its parent's name; a sporeling does not."""
    origin = row.values["origin"]
    return parent_plant(writing, origin) if origin["how"].came == Came.PIECE else None


def parent_plant(writing: Writing, origin: dict[str, Any]) -> Specimen | None:
    ref: Ref | None = origin["parent"]
    return writing.plant(ref) if ref is not None and ref[0] == "plant" else None


def sow_their_own(
    writing: Writing, rows: list[PlannedRow], names: dict[int, Named]
) -> dict[int, SporeSowing]:
    sown = [row for row in rows if has_own_sowing(row.values["origin"])]
    made = record_sowings([own_sowing(writing, row, names[id(row)][0]) for row in sown], by=writing.by)
    return {id(row): sowing for row, sowing in zip(sown, made, strict=True)}


def has_own_sowing(origin: dict[str, Any]) -> bool:
    ref: Ref | None = origin["parent"]
    return bool(origin["how"].came == Came.SOWING and (ref is None or ref[0] != "sowing"))


def own_sowing(writing: Writing, row: PlannedRow, name: Name | None) -> NewSowing:
    origin = row.values["origin"]
    mine = origin["own"] and plain(origin["own"][0]) == "own"
    keeper = writing.keeper(row.values["keeper"]) if mine else None
    return NewSowing(
        sources=sources_of(writing, row, name),
        fields={
            "label": (origin["words"] or row.values["label"])[:200],
            "by": keeper.member if keeper else None,
            "import_key": short(f"plant:{row.key}"),
        },
    )


def sources_of(writing: Writing, row: PlannedRow, name: Name | None) -> tuple[Source, ...]:
    """Whose spores: a plant, the names in the words, the name after “ex”, or words."""
    origin, thought = row.values["origin"], row.values["thought"]
    parent = parent_plant(writing, origin)
    if parent is not None:
        return (Source(specimen=parent),)
    if origin["own"]:
        descent: Descent = origin["own"][1]
        return tuple(
            Source(name=name_in(writing, words, origin), words=words[:200]) for words in descent.parents
        )
    if thought.is_ex and name is not None:
        return (Source(name=name, words=origin["words"]),)
    return (Source(words=origin["words"]),) if origin["words"] else ()


def name_in(writing: Writing, words: str, origin: dict[str, Any]) -> Name | None:
    return writing.name(words, genus=origin["genus"])[0]


def new_plant(writing: Writing, row: PlannedRow, thought: Named, own: SporeSowing | None) -> NewPlant:
    values, origin = row.values, row.values["origin"]
    keeper = writing.keeper(values["keeper"])
    ref: Ref | None = origin["parent"]
    name, qualifier, ground = thought
    return NewPlant(
        keeper=keeper, came=origin["how"].came, label_text=values["label"], name=name, qualifier=qualifier,
        ground=ground, acquired=values["acquired"], code=values["code"],
        piece_of=piece_of(writing, values, keeper) if origin["how"].came == Came.PIECE else None,
        sowing=own or (writing.sowing(ref) if ref is not None and ref[0] == "sowing" else None),
        fields={
            **values["fields"], "import_key": short(row.key), "from_words": values["from_words"],
            "from_keeper": writing.keeper(values["from_keeper"]),
            "meeting": writing.meeting(values["fields"]["meeting"]),
        },
    )  # fmt: skip


def piece_of(writing: Writing, values: dict[str, Any], keeper: Keeper | None) -> PieceOf:
    """Who gave a piece did not say who took it; one's own was taken by oneself."""
    origin, how = values["origin"], values["origin"]["how"]
    own = values["own"] and keeper is not None
    sported = origin["words"] if how.sport and SPORT.match(origin["words"]) else ""
    return PieceOf(
        parent_plant(writing, origin),
        origin["words"],
        how.piece,
        how.sport,
        sported,
        by=keeper.member if own and keeper else None,
    )


def found_names(writing: Writing, rows: list[PlannedRow]) -> None:
    """A grower's own cross is claimed for the plant; the first plant of a name is set down as such."""
    crossed = [row for row in rows if (own := row.values["origin"]["own"]) and own[1].says == "cross"]
    claim_parentage_of_many([own_cross(writing, row) for row in crossed], by=writing.by)
    for row in rows:
        plant = writing.written[id(row)]
        thought = plant.identification if isinstance(plant, Specimen) else None
        if row.values["first_plant"] and thought is not None and thought.name is not None:
            name = Name.objects.get(pk=thought.name.pk)
            edit_name(name, version=name.version, original_plant=plant)


def own_cross(writing: Writing, row: PlannedRow) -> NewClaim:
    origin, plant = row.values["origin"], writing.written[id(row)]
    whose, descent = origin["own"]
    return NewClaim(
        about=plant, says="cross", ground="record",
        parents=tuple(Source(name=name_in(writing, words, origin)) for words in descent.parents),
        fields={
            "by_words": "" if plain(whose) == "own" else whose,
            "made": row.values["acquired"], "source": origin["words"],
            "import_key": short(f"own:{row.key}"),
        },
    )  # fmt: skip
