"""Bounds against all that may be true: every unsettled plant settled in every way, one after another."""

from itertools import combinations, product
from math import prod

from hypothesis import HealthCheck, assume, given, settings

from lineage.core import Node, Pedigree
from tests.lineage.core.generated import pedigrees
from tests.lineage.core.twin import Twin


def ways_of(node, genet):
    """The settled nodes an unsettled one may turn out to be."""
    if node.origin == "self" and node.selfing is None:
        return [Node(node.id, "self", parents=node.parents, selfing=mode) for mode in ("intra", "inter")]
    if node.origin != "mixed":
        return [node]
    plants = {genet(p) if p is not None else (None, place): p for place, p in enumerate(node.parents)}
    crosses = [Node(node.id, "cross", parents=pair) for pair in combinations(plants.values(), 2)]
    if node.selfs_excluded and crosses:
        return crosses
    return crosses + [
        Node(node.id, "self", parents=(parent,), selfing=mode)
        for parent in plants.values()
        for mode in ("intra", "inter")
    ]


def selfs_within_a_genet(node, genet):
    """A cross of two plants of one genet is a self, of which the way is not known."""
    if node.origin == "cross" and None not in node.parents and len({genet(p) for p in node.parents}) == 1:
        return Node(node.id, "self", parents=node.parents[:1])
    return node


def settled(nodes):
    """All pedigrees the nodes may turn out to be, as twins."""
    genet = Twin(nodes).genet
    ways = [ways_of(selfs_within_a_genet(node, genet), genet) for node in nodes]
    assume(prod(len(each) for each in ways) <= 300)
    return [Twin(list(choice)) for choice in product(*ways)]


few = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.filter_too_much])


@few
@given(pedigrees(max_size=7))
def test_bounds_of_composition_are_attained(nodes):
    pedigree, possible = Pedigree(nodes), settled(nodes)
    for node in nodes:
        for species, bounds in pedigree.fact(node.id).composition.items():
            ends = [twin.share(twin.genet(node.id), species) for twin in possible]
            assert bounds == (min(low for low, _ in ends), max(high for _, high in ends))


@few
@given(pedigrees(max_size=7))
def test_a_species_not_named_lies_below_what_is_not_known(nodes):
    pedigree, possible = Pedigree(nodes), settled(nodes)
    for node in nodes:
        composition = pedigree.fact(node.id).composition
        rest = composition[None][1] if None in composition else 0
        ends = [twin.share(twin.genet(node.id), "wandae") for twin in possible]
        assert (0, rest) == (min(low for low, _ in ends), max(high for _, high in ends))


@few
@given(pedigrees(max_size=7))
def test_bounds_of_inbreeding_and_kinship_hold(nodes):
    pedigree, possible = Pedigree(nodes), settled(nodes)
    for a, b in combinations([node.id for node in nodes], 2):
        low, high = pedigree.kinship(a, b)
        assert all(low <= end <= high for twin in possible for end in twin.kinship(a, b))
    for node in nodes:
        low, high = pedigree.fact(node.id).inbreeding
        assert all(low <= end <= high for twin in possible for end in twin.f(twin.genet(node.id)))


@few
@given(pedigrees(max_size=7))
def test_bounds_of_generations_hold(nodes):
    pedigree, possible = Pedigree(nodes), settled(nodes)
    for node in nodes:
        fact = pedigree.fact(node.id)
        eq_low, eq_high = fact.eq_generations
        for twin in possible:
            genet = twin.genet(node.id)
            assert fact.gen_min <= twin.gens(genet)[0] <= twin.gens(genet)[1] <= fact.gen_max
            assert eq_low <= twin.eq(genet)[0] <= eq_high
