"""Whoever only looks, at any page, in any role, changes no record."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from django.test import Client
from django.urls import reverse

from frondkeep.society.models import Society
from tests.hostile.records import changed, records
from tests.test_doors import ADMIN, ROLES, TABLE

pytestmark = pytest.mark.django_db


def every_address(world: SimpleNamespace) -> list[str]:
    return [
        reverse(name, kwargs=row.kwargs(world, which)) for name, row in TABLE.items() for which in row.allowed
    ]


@pytest.mark.parametrize("role", [*ROLES, "stranger"])
def test_looking_at_every_page_changes_nothing(role: str, world: SimpleNamespace) -> None:
    Society.current()
    client = world.clients.get(role) or Client()
    before = records()
    for address in every_address(world):
        reply = client.get(address)
        if reply.streaming:
            reply.getvalue()
        assert reply.status_code < 500, address
    assert not changed(before)


@pytest.mark.parametrize("model", sorted(ADMIN))
def test_looking_at_the_records_behind_the_pages_changes_nothing(model: str, world: SimpleNamespace) -> None:
    before = records()
    for role in sorted(ADMIN[model]):
        listing = world.clients[role].get(reverse(f"admin:{model}_changelist"))
        for one in listing.context_data["cl"].queryset[:2]:
            address = reverse(f"admin:{model}_change", args=[one.pk])
            assert world.clients[role].get(address).status_code == 200, address
    assert not changed(before)
