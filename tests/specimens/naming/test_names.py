"""Names are written as the codes of nomenclature ask."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specimens.naming.names import NameParts, Run, name_runs, plain_name, sort_key


def styled(parts: NameParts, **how: bool) -> str:
    """The name with asterisks around what is italic."""
    return "".join(f"*{run.text}*" if run.style == "italic" else run.text for run in name_runs(parts, **how))


@pytest.mark.parametrize(
    ("parts", "written"),
    [
        (NameParts(), ""),
        (NameParts("Platycerium"), "*Platycerium*"),
        (NameParts("Platycerium", species="ridleyi"), "*Platycerium ridleyi*"),
        (NameParts("Platycerium", cultivar="Silver Tassel"), "*Platycerium* ‘Silver Tassel’"),
        (
            NameParts("Platycerium", cultivar="Silver Tassel", raised_from=True),
            "*Platycerium* ex ‘Silver Tassel’",
        ),
        (
            NameParts("Platycerium", species="bifurcatum", cultivar="Netherlands"),
            "*Platycerium bifurcatum* ‘Netherlands’",
        ),
        (
            NameParts(
                "Platycerium", species="bifurcatum", infra=(("subsp.", "willinckii"), ("f.", "pygmaeum"))
            ),
            "*Platycerium bifurcatum* subsp. *willinckii* f. *pygmaeum*",
        ),
        (
            NameParts("Platycerium", species="alcicorne", informal="African form"),
            "*Platycerium alcicorne* African form",
        ),
        (
            NameParts("Polystichum", species="setiferum", group="Divisilobum"),
            "*Polystichum setiferum* Divisilobum Group",
        ),
        (
            NameParts("Polystichum", species="setiferum", group="Divisilobum Group", cultivar="Dahlem"),
            "*Polystichum setiferum* (Divisilobum Group) ‘Dahlem’",
        ),
        (NameParts("Nephrolepis", cultivar="Nevada", trade="Green Sea"), "*Nephrolepis* GREEN SEA ‘Nevada’"),
        (
            NameParts("Asplenosorus", genus_hybrid=True, species="ebenoides", species_hybrid=True),
            "×*Asplenosorus* ×*ebenoides*",
        ),
        (NameParts("Dryopteris", species="complexa", species_hybrid=True), "*Dryopteris* ×*complexa*"),
        (NameParts(cultivar="Silver Tassel"), "‘Silver Tassel’"),
        (NameParts("Athyrium", cultivar="Lady's Lace"), "*Athyrium* ‘Lady’s Lace’"),
    ],
)
def test_latin_is_italic_and_everything_else_upright(parts: NameParts, written: str) -> None:
    assert styled(parts) == written
    assert plain_name(parts) == written.replace("*", "")


@pytest.mark.parametrize(
    ("parts", "written"),
    [
        (NameParts("Platycerium", species="ridleyi", qualifier="cf."), "*Platycerium* cf. *ridleyi*"),
        (NameParts("Platycerium", species="ridleyi", qualifier="aff."), "*Platycerium* aff. *ridleyi*"),
        (NameParts("Platycerium", species="ridleyi", qualifier="?"), "*Platycerium ridleyi*?"),
        (
            NameParts("Platycerium", species="a", species_hybrid=True, qualifier="cf."),
            "*Platycerium* cf. ×*a*",
        ),
        (
            NameParts("Platycerium", cultivar="Silver Tassel", qualifier="cf."),
            "*Platycerium* cf. ‘Silver Tassel’",
        ),
        (NameParts("Platycerium", cultivar="Silver Tassel", qualifier="?"), "*Platycerium* ‘Silver Tassel’?"),
        (NameParts("Platycerium", qualifier="cf."), "cf. *Platycerium*"),
        (NameParts(qualifier="cf."), ""),
    ],
)
def test_doubt_stands_before_the_epithet_and_its_question_mark_after(parts: NameParts, written: str) -> None:
    assert styled(parts) == written


@pytest.mark.parametrize(
    ("parts", "written"),
    [
        (NameParts("Platycerium", species="alcicorne", author="Desv."), "*Platycerium alcicorne* Desv."),
        (
            NameParts("Platycerium", species="a", infra=(("var.", "b"),), author="X"),
            "*Platycerium a* var. *b* X",
        ),
        (
            NameParts("Platycerium", species="a", infra=(("var.", "a"),), author="X"),
            "*Platycerium a* X var. *a*",
        ),
        (NameParts("Platycerium", species="a", cultivar="C", author="X"), "*Platycerium a* X ‘C’"),
        (NameParts("Platycerium", author="Desv."), "*Platycerium* Desv."),
        (NameParts("Platycerium", species="a", author="X", qualifier="?"), "*Platycerium a*? X"),
    ],
)
def test_an_author_follows_the_botanical_name_but_no_repeated_epithet(parts: NameParts, written: str) -> None:
    assert styled(parts, with_author=True) == written


def test_an_author_is_left_out_unless_asked_for() -> None:
    assert (
        plain_name(NameParts("Platycerium", species="alcicorne", author="Desv.")) == "Platycerium alcicorne"
    )


def test_a_genus_can_be_its_initial_and_quotes_can_be_left_out() -> None:
    parts = NameParts("Platycerium", cultivar="Silver Tassel")
    assert styled(parts, short_genus=True) == "*P.* ‘Silver Tassel’"
    assert plain_name(parts, quotes=False) == "Platycerium Silver Tassel"


def test_spaces_between_styles_are_upright() -> None:
    parts = NameParts("Platycerium", species="bifurcatum", infra=(("subsp.", "veitchii"),))
    assert name_runs(parts) == (
        Run("Platycerium bifurcatum", "italic"),
        Run(" subsp. ", "roman"),
        Run("veitchii", "italic"),
    )


@pytest.mark.parametrize(
    ("given_rank", "written"),
    [("subspecies", "subsp."), ("ssp.", "subsp."), ("Forma", "f."), ("var.", "var.")],
)
def test_ranks_are_abbreviated_one_way(given_rank: str, written: str) -> None:
    assert NameParts("A", species="b", infra=((given_rank, "c"),)).infra == ((written, "c"),)


def test_an_unknown_qualifier_is_refused() -> None:
    with pytest.raises(ValueError, match="qualifier"):
        NameParts("Platycerium", qualifier="maybe")


words = st.text("abcdefgh ×éß'", max_size=8)
any_parts = st.builds(
    NameParts,
    genus=words,
    genus_hybrid=st.booleans(),
    species=words,
    species_hybrid=st.booleans(),
    infra=st.lists(st.tuples(st.sampled_from(["subsp.", "var.", "f."]), words), max_size=2).map(tuple),
    informal=words,
    group=words,
    cultivar=words,
    trade=words,
    author=words,
    qualifier=st.sampled_from(["", "cf.", "aff.", "?"]),
    raised_from=st.booleans(),
)


@settings(deadline=None)
@given(any_parts)
def test_parts_survive_json(parts: NameParts) -> None:
    kept = parts.to_json()
    assert NameParts.from_json(kept) == parts
    assert all(kept.values())


def test_a_part_that_does_not_exist_is_refused() -> None:
    with pytest.raises(ValueError, match="grex"):
        NameParts.from_json({"genus": "Platycerium", "grex": "Silver"})


@settings(deadline=None)
@given(any_parts, st.booleans(), st.booleans(), st.booleans())
def test_neighbouring_runs_differ_in_style(parts: NameParts, short: bool, author: bool, quotes: bool) -> None:
    runs = name_runs(parts, short_genus=short, with_author=author, quotes=quotes)
    assert all(left.style != right.style for left, right in pairwise(runs))
    assert all(run.text for run in runs)


def test_names_sort_as_in_an_index() -> None:
    in_order = [
        NameParts("Adiantum"),
        NameParts("Asplenosorus", genus_hybrid=True),
        NameParts("Platycerium"),
        NameParts("Platycerium", cultivar="Élan"),
        NameParts("Platycerium", cultivar="Elk No. 2"),
        NameParts("Platycerium", cultivar="Elk No. 10"),
        NameParts("Platycerium", species="andinum"),
        NameParts("Platycerium", species="andinum", cultivar="Zebra"),
        NameParts("Platycerium", species="elemaria", species_hybrid=True),
        NameParts("Platycerium", species="ridleyi"),
        NameParts("Pteris"),
    ]
    mixed = in_order[::2] + in_order[1::2]
    assert sorted(mixed, key=sort_key) == in_order
