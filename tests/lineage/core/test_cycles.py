"""Cycles are refused with their members named; links by name give way first."""

import networkx as nx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core import Node, Pedigree, PedigreeError


def division(id, parent, **more):
    return Node(id, "division", parents=(parent,), **more)


def selfed(id, parent):
    return Node(id, "self", parents=(parent,))


def cycle_of(*nodes):
    with pytest.raises(PedigreeError) as caught:
        Pedigree(nodes)
    return set(caught.value.members)


def test_a_plant_that_is_its_own_parent():
    assert cycle_of(selfed("A", "A")) == {"A"}
    assert cycle_of(division("A", "A")) == {"A"}


@pytest.mark.parametrize("length", [2, 3, 4, 5, 7, 8, 16, 64])
def test_divisions_in_a_circle_of_any_length(length):
    circle = [division(i, (i + 1) % length) for i in range(length)]
    innocent = [division("pup", 0), Node("sporeling", "cross", parents=("pup", None))]
    assert cycle_of(*circle, *innocent) == set(range(length))


def test_sowings_in_a_circle_without_their_descendants():
    circle = [
        selfed("A", "B"),
        Node("B", "mixed", parents=("C", "F")),
        Node("C", "cross", parents=("F", "A")),
    ]
    assert cycle_of(Node("F", "founder"), *circle, selfed("D", "C"), division("E", "A")) == {"A", "B", "C"}


def test_a_circle_that_neither_clones_nor_sowings_close_alone():
    assert cycle_of(selfed("ortet", "sporeling"), division("pup", "ortet"), selfed("sporeling", "pup")) == {
        "ortet",
        "pup",
        "sporeling",
    }


def test_links_by_name_in_a_circle_are_dropped_and_listed():
    pedigree = Pedigree(
        [
            division("'Silver Tassel'", "original", by_name=True),
            selfed("original", "bought"),
            division("bought", "'Silver Tassel'", by_name=True),
            division("elsewhere", "'Silver Tassel'", by_name=True),
        ]
    )
    assert sorted(pedigree.dropped_links) == [("'Silver Tassel'", "original"), ("bought", "'Silver Tassel'")]
    assert pedigree.fact("bought").composition == {None: (1.0, 1.0)}
    assert pedigree.fact("'Silver Tassel'").genet == "'Silver Tassel'"
    assert pedigree.fact("elsewhere").genet == "'Silver Tassel'"
    assert pedigree.fact("original").gen_max == 1
    assert pedigree.ancestors("bought") == set()
    assert pedigree.descendants("'Silver Tassel'") == {"elsewhere"}


def test_a_circle_left_when_links_by_name_are_gone_is_refused():
    nodes = [selfed("A", "B"), selfed("B", "A"), division("C", "A", by_name=True), selfed("D", "C")]
    assert cycle_of(*nodes, selfed("E", "A")) == {"A", "B"}


def raw_links(nodes):
    return [(node.id, parent) for node in nodes for parent in node.parents if parent is not None]


@st.composite
def tangled(draw):
    """Nodes whose parents are any nodes at all."""
    ids = list(range(draw(st.integers(1, 7))))
    someone = st.sampled_from([*ids, None])
    nodes = []
    for id in ids:
        origin = draw(st.sampled_from(["division", "self", "cross", "founder", "mixed"]))
        count = {"founder": 0, "cross": 2, "mixed": 3}.get(origin, 1)
        parents = tuple(draw(someone) for _ in range(count))
        by_name = origin == "division" and draw(st.booleans())
        nodes.append(Node(id, origin, parents=parents, by_name=by_name))
    return nodes


def genets(nodes, links):
    """The genet quotient: certain clone links joined, all others (links by name too) between genets."""
    clones = nx.Graph()
    clones.add_nodes_from(node.id for node in nodes)
    certain = {(n.id, n.parents[0]) for n in nodes if n.origin == "division" and not n.by_name}
    clones.add_edges_from(link for link in certain if None not in link)
    genet = {id: min(part) for part in nx.connected_components(clones) for id in part}
    quotient = nx.DiGraph()
    quotient.add_nodes_from(genet.values())
    quotient.add_edges_from((genet[a], genet[b]) for a, b in links if (a, b) not in certain)
    return genet, quotient


@settings(deadline=None)
@given(tangled())
def test_the_links_dropped_are_those_inside_a_component_of_the_genets(nodes):
    links = raw_links(nodes)
    genet, quotient = genets(nodes, links)
    component = {
        id: place for place, part in enumerate(nx.strongly_connected_components(quotient)) for id in part
    }
    by_name = {(n.id, n.parents[0]) for n in nodes if n.by_name and n.parents[0] is not None}
    inside = {(a, b) for a, b in by_name if component[genet[a]] == component[genet[b]]}
    left = nx.DiGraph(link for link in links if link not in inside)
    try:
        pedigree = Pedigree(nodes)
    except PedigreeError as error:
        members = error.members
        assert all(left.has_edge(a, b) for a, b in zip(members, (*members[1:], members[0]), strict=True))
    else:
        assert nx.is_directed_acyclic_graph(left)
        assert set(pedigree.dropped_links) == inside
