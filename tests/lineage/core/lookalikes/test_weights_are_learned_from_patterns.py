"""Expectation-maximisation finds the shares that made the patterns."""

import itertools
import math

import numpy as np
import pytest

from lineage.core.lookalikes import Weights, estimate_weights

WITNESSES = ["name", "raiser", "year"]
M = {"name": 0.9, "raiser": 0.8, "year": 0.7}
U = {"name": 0.05, "raiser": 0.1, "year": 0.2}
SHARE = 0.2


def make_expected_patterns(pairs=1_000_000):
    counts = {}
    for pattern in itertools.product("01", repeat=3):
        shares = [
            math.prod(
                side[key] if level == "1" else 1 - side[key]
                for key, level in zip(WITNESSES, pattern, strict=True)
            )
            for side in (M, U)
        ]
        counts[pattern] = round(pairs * (SHARE * shares[0] + (1 - SHARE) * shares[1]))
    return counts


def test_the_shares_behind_the_patterns_are_found_again():
    found = estimate_weights(make_expected_patterns(), witnesses=WITNESSES)
    assert found.settled
    assert found.share == pytest.approx(SHARE, abs=1e-3)
    for key in WITNESSES:
        assert found.m[key]["1"] == pytest.approx(M[key], abs=1e-3)
        assert found.u[key]["1"] == pytest.approx(U[key], abs=1e-3)


def test_patterns_one_by_one_or_counted_give_the_same():
    counts = make_expected_patterns(pairs=500)
    one_by_one = [pattern for pattern, times in counts.items() for _ in range(times)]
    assert estimate_weights(one_by_one, witnesses=WITNESSES) == estimate_weights(counts, witnesses=WITNESSES)


def test_each_round_makes_the_patterns_likelier():
    counts = make_expected_patterns(pairs=2000)

    def likelihood(found):
        total = 0.0
        for pattern, times in counts.items():
            m = math.prod(found.m[key][level] for key, level in zip(WITNESSES, pattern, strict=True))
            u = math.prod(found.u[key][level] for key, level in zip(WITNESSES, pattern, strict=True))
            total += times * math.log(found.share * m + (1 - found.share) * u)
        return total

    runs = [
        likelihood(estimate_weights(counts, witnesses=WITNESSES, most_rounds=n)) for n in (1, 2, 4, 8, 16)
    ]
    assert runs == sorted(runs)


def test_what_is_not_known_tells_nothing():
    counts = make_expected_patterns()
    rng = np.random.default_rng(7)
    with_gaps = dict(counts)
    for pattern, times in counts.items():
        hidden = int(rng.integers(times // 4, times // 3))
        with_gaps[pattern] -= hidden
        key = ("not known", *pattern[1:])
        with_gaps[key] = with_gaps.get(key, 0) + hidden
    found = estimate_weights(with_gaps, witnesses=WITNESSES)
    assert set(found.m["name"]) == {"0", "1"}
    assert found.m["raiser"]["1"] == pytest.approx(M["raiser"], abs=0.03)


def test_u_is_taken_from_random_pairs_where_they_are_given():
    random_patterns = {("1", "0", "0"): 2, ("0", "0", "0"): 95, ("0", "1", "1"): 3}
    found = estimate_weights(make_expected_patterns(), witnesses=WITNESSES, random_patterns=random_patterns)
    assert found.u["name"]["1"] == pytest.approx(0.02)
    assert found.u["year"]["1"] == pytest.approx(0.03)


def test_a_level_never_seen_keeps_its_default():
    default = Weights.default()
    patterns = {("near", "same two"): 80, ("far", "none shared"): 900, ("near", "none shared"): 20}
    found = estimate_weights(patterns, witnesses=["spelling", "parents"], start=default)
    learned = found.applied_to(default)
    assert learned.witness("spelling").level("lexicon") == default.witness("spelling").level("lexicon")
    assert learned.witness("parents").level("same two").m == pytest.approx(found.m["parents"]["same two"])
    assert learned.witness("traits") == default.witness("traits")


def test_no_patterns_are_refused():
    with pytest.raises(ValueError, match="no patterns"):
        estimate_weights([], witnesses=WITNESSES)


def test_patterns_of_the_wrong_length_are_refused():
    with pytest.raises(ValueError, match="3 witnesses"):
        estimate_weights([("1", "0")], witnesses=WITNESSES)
