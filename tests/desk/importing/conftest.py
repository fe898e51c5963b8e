"""A small society that rows refer to."""

import pytest

from frondkeep.society.models import Keeper, Member
from frondkeep.society.services.people import society_keeper
from specimens.models import Name, Specimen
from tests.cast import make_cultivar, make_household, make_member, make_plant, make_species, when


@pytest.fixture
def ada(db: None) -> Member:
    return make_member("Ada Quill")


@pytest.fixture
def jonas(db: None) -> Member:
    return make_member("Jonas Wren-Pike")


@pytest.fixture
def home(db: None) -> Keeper:
    return make_household("Lode household", make_member("Bram Lode"), make_member("Mei Lode")).keeper


@pytest.fixture
def society(db: None) -> Keeper:
    return society_keeper()


@pytest.fixture
def tassel(db: None) -> Name:
    return make_cultivar("Silver Tassel")


@pytest.fixture
def hillii(db: None) -> Name:
    return make_species("hillii")


@pytest.fixture
def f1(ada: Member, tassel: Name) -> Specimen:
    """Ada's 'Silver Tassel', on record under the society's number F1."""
    from datetime import date

    return make_plant(
        ada, tassel, society_number="F1", acquired=when("2001", date(2001, 1, 1), date(2001, 12, 31))
    )
