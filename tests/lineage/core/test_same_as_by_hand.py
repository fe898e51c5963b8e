"""Every quantity equals, exactly, what its definition gives in fractions."""

from fractions import Fraction
from itertools import combinations_with_replacement

import networkx as nx
import pytest
from hypothesis import given, settings

from lineage.core import Pedigree, computing
from tests.lineage.core.generated import pedigrees
from tests.lineage.core.twin import Twin


@pytest.fixture(scope="module", params=["class by class", "level by level"], autouse=True)
def way(request):
    """Both ways of computing, whatever the pedigree's shape."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(computing, "NARROW", 1 << 40 if request.param == "class by class" else 0)
        patch.setattr(computing, "FEW_PAIRS", 1 << 40 if request.param == "class by class" else -1)
        yield


def exactly(interval):
    return tuple(Fraction(end) for end in interval)


@settings(deadline=None)
@given(pedigrees())
def test_clones(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for node in nodes:
        fact = pedigree.fact(node.id)
        assert fact.genet == fact.ortet == twin.genet(node.id)
        assert fact.clonal_steps == twin.clonal_steps(node.id)
        assert fact.clone_line == twin.clone_line(node.id)


@settings(deadline=None)
@given(pedigrees())
def test_generations(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for node in nodes:
        fact = pedigree.fact(node.id)
        assert (fact.gen_min, fact.gen_max) == twin.gens(twin.genet(node.id))
        assert exactly(fact.eq_generations) == twin.eq(twin.genet(node.id))


@settings(deadline=None)
@given(pedigrees())
def test_completeness(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for node in nodes:
        expected = twin.completeness(node.id)
        found = pedigree.fact(node.id).completeness
        assert found == (None if expected is None else float(expected))


@settings(deadline=None)
@given(pedigrees())
def test_composition(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for node in nodes:
        found = pedigree.fact(node.id).composition
        assert {species: exactly(ends) for species, ends in found.items()} == twin.composition(node.id)


@settings(deadline=None)
@given(pedigrees())
def test_inbreeding(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for node in nodes:
        assert exactly(pedigree.fact(node.id).inbreeding) == twin.f(twin.genet(node.id))


@settings(deadline=None)
@given(pedigrees(max_size=10))
def test_kinship(nodes):
    pedigree, twin = Pedigree(nodes), Twin(nodes)
    for a, b in combinations_with_replacement([node.id for node in nodes], 2):
        assert exactly(pedigree.kinship(a, b)) == twin.kinship(a, b)
        assert pedigree.kinship(b, a) == pedigree.kinship(a, b)


@settings(deadline=None)
@given(pedigrees())
def test_ancestors_and_descendants_are_those_of_the_graph(nodes):
    graph = nx.DiGraph()
    graph.add_nodes_from(node.id for node in nodes)
    graph.add_edges_from((p, node.id) for node in nodes for p in node.parents if p is not None)
    pedigree = Pedigree(nodes)
    for node in nodes:
        assert pedigree.ancestors(node.id) == nx.ancestors(graph, node.id)
        assert pedigree.descendants(node.id) == nx.descendants(graph, node.id)
