"""Pedigrees drawn by hypothesis: every origin, parents not known, sports, links by name, any order."""

from fractions import Fraction

from hypothesis import strategies as st

from lineage.core import Node

COMPOSITIONS = (
    None,
    {"andinum": 1},
    {"ridleyi": 1},
    {"coronarium": 1},
    {"andinum": Fraction(1, 2), "ridleyi": Fraction(1, 2)},
    {"andinum": Fraction(3, 8), None: Fraction(5, 8)},
)
flags = st.booleans()


@st.composite
def one_node(draw, id, earlier, sown=("self", "cross", "mixed")):
    """One node whose parents are among the earlier ones or not known."""
    origins = ["founder", "unknown"]
    if earlier:
        origins += [*sown, *sown, "division", "apogamous"]
    origin = draw(st.sampled_from(origins))
    someone = st.sampled_from([*earlier, None]) if earlier else st.none()
    if origin == "founder":
        return Node(id, origin, composition=draw(st.sampled_from(COMPOSITIONS)))
    if origin == "unknown":
        return Node(id, origin)
    if origin in ("division", "apogamous"):
        return Node(id, origin, parents=(draw(someone),), sport=draw(flags), by_name=draw(flags))
    if origin == "self":
        return Node(
            id, origin, parents=(draw(someone),), selfing=draw(st.sampled_from([None, "intra", "inter"]))
        )
    if origin == "cross":
        return Node(id, origin, parents=(draw(someone), draw(someone)))
    candidates = draw(st.lists(someone, min_size=1, max_size=4))
    excluded = draw(flags) and candidates != [None]
    return Node(id, origin, parents=tuple(candidates), selfs_excluded=excluded)


@st.composite
def pedigrees(draw, max_size=14, sown=("self", "cross", "mixed")):
    """A list of nodes without cycles, in any order."""
    ids = [f"P{number}" for number in range(draw(st.integers(1, max_size)))]
    nodes = []
    for place, id in enumerate(ids):
        nodes.append(draw(one_node(id, ids[:place], sown)))
    return draw(st.permutations(nodes))
