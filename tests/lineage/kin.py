"""Plants and names by how they descend, in nobody's hands; and short ways to ask what is stored of them."""

from __future__ import annotations

from typing import Any

from lineage.models import LineageNode
from specimens.models import Came, Name, Rank, Reproduction, Specimen, Treatment
from specimens.services.names import add_name
from specimens.services.sowings import Source
from specimens.services.specimens import PieceOf, log_specimen
from tests.cast import make_genus


def make_name(epithet: str, rank: str = Rank.SPECIES, *, parent: Name | None = None, **fields: Any) -> Name:
    """A name under Platycerium, unless a parent is given."""
    return add_name(rank=rank, epithet=epithet, parent=parent or make_genus(), **fields)


def make_cultivar(epithet: str, *, reproduction: str = Reproduction.DIVISION, **fields: Any) -> Name:
    """A cultivar kept by division only, unless said otherwise."""
    return make_name(epithet, Rank.CULTIVAR, reproduction=reproduction, **fields)


def make_formula(first: Name, second: Name) -> Name:
    return add_name(rank=Rank.FORMULA, first_parent=first, second_parent=second)


def make_treatment(name: str = "Account of 2006", *, followed: bool = True) -> Treatment:
    return Treatment.objects.create(name=name, followed=followed)


def make_plant(*, came: str = Came.OUTSIDE, **fields: Any) -> Specimen:
    """A plant in nobody's hands; bought or given, unless said otherwise."""
    return log_specimen(keeper=fields.pop("keeper", None), came=came, by=None, **fields)


def make_pup(parent: Specimen | None, **fields: Any) -> Specimen:
    """A piece of a plant; what belongs to the division (words, sport) is told from the rest."""
    of_piece = {key: fields.pop(key) for key in ("words", "sport", "sport_words") if key in fields}
    return make_plant(came=Came.PIECE, piece_of=PieceOf(parent=parent, **of_piece), **fields)


def node(of: Specimen | Name) -> LineageNode:
    """The stored node of a plant or a cultivar name, fresh."""
    about = {"specimen": of} if isinstance(of, Specimen) else {"name": of}
    return LineageNode.objects.select_related("parentage", "species", "genet").get(**about)


def parents(of: Specimen | Name | LineageNode) -> list[Specimen | Name | str | None]:
    """Its parents in order: plants, names, the text of a mention, None for a plant not known."""
    at = of if isinstance(of, LineageNode) else node(of)
    edges = at.parents.select_related("parent__specimen", "parent__name").order_by("order")
    return [_what(edge.parent) for edge in edges]


def parent_nodes(of: Specimen | Name | LineageNode) -> list[LineageNode]:
    at = of if isinstance(of, LineageNode) else node(of)
    return [edge.parent for edge in at.parents.select_related("parent__species").order_by("order")]


def _what(at: LineageNode | None) -> Specimen | Name | str | None:
    return None if at is None else at.specimen or at.name or at.mention


def made_of(of: Specimen | Name) -> dict[str | None, tuple[float, float]]:
    """Bounds of each species by its epithet; None for what is not known."""
    shares = node(of).parentage.shares.select_related("species")
    return {share.species and share.species.epithet: (share.lo, share.hi) for share in shares}


def spores_of(*plants_or_names: Specimen | Name | str) -> tuple[Source, ...]:
    """Sources of a sowing, or parents of a claim; a text is a plant not on record."""
    return tuple(
        Source(specimen=one)
        if isinstance(one, Specimen)
        else Source(name=one)
        if isinstance(one, Name)
        else Source(words=one)
        for one in plants_or_names
    )
