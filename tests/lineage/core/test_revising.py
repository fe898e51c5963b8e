"""A revised pedigree is the one made anew, and says which facts changed; refused, it is as before."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lineage.core import Node, Pedigree, PedigreeError, revision
from tests.lineage.core.generated import one_node, pedigrees


@pytest.fixture(scope="module", params=["step by step", "made anew"], autouse=True)
def way(request):
    """Both ways of revising, whatever the change."""
    with pytest.MonkeyPatch.context() as patch:
        if request.param == "made anew":
            patch.setattr(revision, "must_rebuild", lambda *_: True)
            patch.setattr("lineage.core.pedigree.must_rebuild", lambda *_: True)
        yield


def everything(pedigree, ids):
    """All a pedigree says, to be compared."""
    return {
        "facts": {id: pedigree.fact(id) for id in ids},
        "kinship": {pair: pedigree.kinship(*pair) for pair in combinations(sorted(ids), 2)},
        "ancestors": {id: pedigree.ancestors(id) for id in ids},
        "descendants": {id: pedigree.descendants(id) for id in ids},
        "dropped": set(pedigree.dropped_links),
        "contradictions": set(pedigree.contradictions),
        "columns": by_id(pedigree),
    }


def by_id(pedigree):
    columns = pedigree.columns()
    names = [name for name in columns if name not in ("id", "parentage_class")]
    rows = zip(*(columns[name].tolist() for name in names), strict=True)
    compositions = [pedigree.class_composition(k) for k in columns["parentage_class"].tolist()]
    found = zip(columns["id"].tolist(), rows, compositions, strict=True)
    return {id: (str(row), composition) for id, row, composition in found}


@st.composite
def changes(draw, ids):
    """Some nodes for old or new ids, with any parents at all, and some ids to remove."""
    wanted = st.sampled_from([*ids, "new 1", "new 2"])
    revised = draw(st.lists(wanted, max_size=3, unique=True))
    nodes = [draw(one_node(id, [*ids, *revised])) for id in revised]
    left = [id for id in ids if id not in revised]
    removed = draw(st.lists(st.sampled_from(left), max_size=2, unique=True)) if left else []
    return nodes, removed


@settings(max_examples=100, deadline=None)
@given(st.data())
def test_one_revision_after_another(data):
    nodes = {node.id: node for node in data.draw(pedigrees(max_size=10))}
    pedigree = Pedigree(nodes.values())
    for _ in range(4):
        revised, removed = data.draw(changes(sorted(nodes)))
        after = {**nodes, **{node.id: node for node in revised}}
        after = {id: node for id, node in after.items() if id not in removed}
        before = everything(pedigree, nodes)
        try:
            fresh = everything(Pedigree(after.values()), after)
        except PedigreeError:
            with pytest.raises(PedigreeError):
                pedigree.revise(revised, removed=removed)
            assert everything(pedigree, nodes) == before
            continue
        changed = pedigree.revise(revised, removed=removed)
        assert everything(pedigree, after) == fresh
        assert changed == {id for id in after if fresh["facts"][id] != before["facts"].get(id)}
        nodes = after


A = Node("A", "founder", composition={"andinum": 1})
B = Node("B", "founder", composition={"ridleyi": 1})
C = Node("C", "cross", parents=("A", "B"))
D = Node("D", "division", parents=("C",))
E = Node("E", "self", parents=("D",))


def test_a_new_claim_changes_the_plant_and_what_is_below_it():
    pedigree = Pedigree([A, B, C, D, E])
    assert pedigree.revise([Node("C", "self", parents=("A",))]) == {"C", "D", "E"}
    assert pedigree.fact("E").composition == {"andinum": (1.0, 1.0)}


def test_nothing_new_changes_nothing():
    pedigree = Pedigree([A, B, C, D, E])
    assert pedigree.revise([C, D]) == set()
    assert pedigree.revise() == set()


def test_a_sport_changes_the_line_below_it_alone():
    pedigree = Pedigree([A, Node("B", "division", parents=("A",)), Node("C", "division", parents=("B",))])
    assert pedigree.revise([Node("B", "division", parents=("A",), sport=True)]) == {"B", "C"}
    assert pedigree.fact("C").clone_line == "B"


def test_an_added_plant_is_among_the_changed_and_a_removed_one_is_not():
    pedigree = Pedigree([A, B, C, D, E])
    assert pedigree.revise([Node("F", "division", parents=("E",))], removed=()) == {"F"}
    assert pedigree.revise(removed=("F",)) == set()
    assert pedigree.descendants("E") == set()


@pytest.mark.parametrize(
    ("nodes", "removed", "members"),
    [
        ([], ("Z",), ("Z",)),
        ([], ("D",), ("E", "D")),
        ([], ("A", "B", "C", "D", "E"), ()),
        ([C, C], (), ("C",)),
        ([E], ("E",), ("E",)),
        ([Node("F", "self", parents=("Z",))], (), ("F", "Z")),
        ([Node("F", "self", parents=("E",))], ("E",), ("F", "E")),
        ([Node("F", "self")], (), ("F",)),
        ([Node(None, "unknown")], (), (None,)),
        ([Node("F", "founder", composition={"andinum": 0.3})], (), ("F",)),
    ],
)
def test_a_refused_revision_changes_nothing(nodes, removed, members):
    pedigree = Pedigree([A, B, C, D, E])
    before = everything(pedigree, "ABCDE")
    with pytest.raises(PedigreeError) as caught:
        pedigree.revise(nodes, removed=removed)
    assert caught.value.members == members
    assert everything(pedigree, "ABCDE") == before


def test_a_cycle_is_refused_with_its_members():
    pedigree = Pedigree([A, B, C, D, E])
    with pytest.raises(PedigreeError) as caught:
        pedigree.revise([Node("C", "cross", parents=("E", "B"))])
    assert set(caught.value.members) == {"C", "D", "E"}
    assert pedigree.fact("C").gen_max == 1


def test_a_link_by_name_gives_way_and_comes_back():
    named = [Node("N", "division", parents=("O",), by_name=True), Node("O", "self", parents=("Q",))]
    pedigree = Pedigree([*named, Node("Q", "founder", composition={"andinum": 1})])
    pedigree.revise([Node("Q", "division", parents=("N",), by_name=True)])
    assert set(pedigree.dropped_links) == {("N", "O"), ("Q", "N")}
    assert pedigree.revise([Node("Q", "founder", composition={"andinum": 1})]) == {"N", "O", "Q"}
    assert pedigree.dropped_links == []
    assert pedigree.fact("N").genet == "O"


def test_contradictions_are_listed_while_they_last():
    pup = Node("pup", "division", parents=("A",))
    sown = Node("S", "mixed", parents=("A", "pup"), selfs_excluded=True)
    pedigree = Pedigree([A, pup, sown])
    assert pedigree.contradictions == [("selfs excluded, one genet", "S", "A")]
    assert pedigree.revise([Node("pup", "unknown")]) == {"pup", "S"}
    assert pedigree.contradictions == []
