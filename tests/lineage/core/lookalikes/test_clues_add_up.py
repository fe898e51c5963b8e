"""Weights: bits add up to a probability, silence weighs nothing, nonsense is refused."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineage.core.lookalikes import LEVELS, UnknownLevel, Weights, compare_names, spelling_level

DEFAULT = Weights.default()
TELLING = {witness.key: [level.name for level in witness.levels] for witness in DEFAULT.witnesses}
levels = st.fixed_dictionaries({}, optional={key: st.sampled_from(names) for key, names in TELLING.items()})


@given(levels)
def test_bits_are_the_sum_of_the_bars(chosen):
    suspicion = DEFAULT.weigh(chosen)
    assert suspicion.bits == pytest.approx(sum(bar.bits for bar in suspicion.summands))
    assert suspicion.probability == pytest.approx(2**suspicion.bits / (1 + 2**suspicion.bits))


@given(levels)
def test_every_bar_gives_its_reason(chosen):
    assert all(bar.reason and bar.shown for bar in DEFAULT.weigh(chosen).summands)


@pytest.mark.parametrize("key", TELLING)
def test_not_known_weighs_nothing(key):
    assert DEFAULT.weigh({key: "not known"}) == DEFAULT.weigh({})
    assert DEFAULT.weigh({}).probability == pytest.approx(DEFAULT.prior)


def test_a_weight_is_the_logarithm_of_m_over_u():
    level = DEFAULT.witness("parents").level("same two")
    bar = next(bar for bar in DEFAULT.weigh({"parents": "same two"}).summands if bar.witness == "parents")
    assert bar.bits == pytest.approx(math.log2(level.m / level.u))


def test_an_unknown_level_is_refused_with_those_that_exist():
    with pytest.raises(UnknownLevel, match="sounds alike"):
        DEFAULT.weigh({"spelling": "similar"})


def test_an_unknown_clue_is_refused_with_those_that_exist():
    with pytest.raises(UnknownLevel, match="genotype"):
        DEFAULT.weigh({"smell": "same"})


def test_every_level_of_likeness_is_a_level_of_the_spelling_clue():
    assert set(LEVELS) == set(TELLING["spelling"]) - {"not known"}


def test_a_slip_alone_enters_the_queue_and_two_plants_in_one_collection_hold_it_back():
    slip = spelling_level(compare_names("Tasselbrook", "Tasselbroak"))
    assert DEFAULT.weigh({"spelling": slip}).probability > 0.5
    assert DEFAULT.weigh({"spelling": slip, "keepers": "grown as two"}).probability < 0.5


def test_a_dna_test_outweighs_the_letters():
    assert DEFAULT.weigh({"spelling": "same", "genotype": "different"}).probability < 0.2
    assert DEFAULT.weigh({"spelling": "far", "genotype": "same", "clone": "one clone"}).probability > 0.9


def test_decisions_move_the_weights_and_are_counted():
    ruled = [({"spelling": "near", "parents": "none shared"}, False)] * 40 + [
        ({"spelling": "near"}, True)
    ] * 5
    learned = DEFAULT.learn(ruled)
    assert learned.rulings == 45
    assert learned.witness("spelling").level("near").bits < DEFAULT.witness("spelling").level("near").bits
    assert (
        learned.witness("parents").level("none shared").bits
        < DEFAULT.witness("parents").level("none shared").bits
    )
    assert learned.witness("traits") == DEFAULT.witness("traits")


def test_no_decisions_leave_the_weights_as_they_are():
    assert DEFAULT.learn([]) == DEFAULT


@given(st.lists(st.tuples(levels, st.booleans()), max_size=20))
def test_learned_shares_stay_shares(ruled):
    for witness in DEFAULT.learn(ruled).witnesses:
        assert all(0 < level.m <= 1 and 0 < level.u <= 1 for level in witness.levels)
