"""Parents are older than their pieces and sporelings, but where the answer key says not."""

from datetime import date

import pytest

from demo_data.compose import grow
from demo_data.plants import Garden, Plant
from tests.demo_data.files import read, years_meant

WRONG = {row["record"] for row in read("contradictions.csv") if row["kind"] == "date"}


@pytest.fixture(scope="module")
def garden() -> Garden:
    return grow()[0]


@pytest.fixture(scope="module")
def everything(garden: Garden) -> list[Plant]:
    return garden.plants + garden.pieces


def test_a_piece_is_younger_than_its_parent(everything: list[Plant]) -> None:
    too_old = {plant.number for plant in everything if plant.parent and plant.got <= plant.parent.got}
    assert too_old <= WRONG
    assert len(too_old) == 1


def test_a_piece_was_taken_while_its_parent_lived(everything: list[Plant]) -> None:
    late = {p.number for p in everything if p.parent and p.parent.gone and p.got >= p.parent.gone}
    assert late <= WRONG
    assert len(late) == 1


def test_a_sporeling_is_younger_than_its_sowing(garden: Garden) -> None:
    early = {plant.number for plant in garden.plants if plant.sowing and plant.got <= plant.sowing.sown}
    assert early <= WRONG
    assert len(early) == 1


def test_spores_were_taken_from_living_plants_older_than_a_year(garden: Garden) -> None:
    for sowing in garden.sowings:
        for source in sowing.sources:
            assert (sowing.sown - source.got).days > 365
            assert source.gone is None or sowing.sown < source.gone


def test_nothing_descends_from_itself(everything: list[Plant]) -> None:
    for plant in everything:
        seen: set[int] = set()
        line = [plant]
        while line:
            one = line.pop()
            assert id(one) not in seen or one is not plant
            if id(one) not in seen:
                seen.add(id(one))
                line += [one.parent] if one.parent else []
                line += one.sowing.sources if one.sowing else []


def test_the_words_of_a_date_hold_its_day(everything: list[Plant]) -> None:
    for plant in everything:
        for words, day in ((plant.when, plant.got), (plant.gone_when, plant.gone)):
            years = years_meant(words)
            assert years is None or (day and years[0] <= day.year <= years[1]), (plant.number, words)


def test_nothing_happened_after_the_list_was_copied_out(everything: list[Plant]) -> None:
    assert max(plant.got for plant in everything) < date(2026, 11, 25)
    assert max(plant.gone for plant in everything if plant.gone) < date(2026, 11, 25)


def test_written_years_agree_with_written_parents() -> None:
    plants = {row["Acc. No"]: row for row in read("plants.csv") if row["Acc. No"]}
    for row in plants.values():
        parent = plants.get(row["Parent plant"])
        mine, older = years_meant(row["When"]), years_meant(parent["When"]) if parent else None
        if mine and older and row["Acc. No"] not in WRONG:
            assert mine[1] >= older[0], row["Acc. No"]
