"""Who decides, and on which names."""

import pytest
from django.test import Client

from frondkeep.society.models import Member
from tests.cast import make_curator, make_member


@pytest.fixture
def curator(db: None) -> Member:
    return make_curator()


@pytest.fixture
def ada(db: None) -> Member:
    """A member who appears by name."""
    return make_member("Ada Quill")


@pytest.fixture
def jonas(db: None) -> Member:
    return make_member("Jonas Wren")


def signed_in(member: Member) -> Client:
    client = Client()
    client.force_login(member.user)
    return client
