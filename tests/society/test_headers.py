"""Every answer carries the content policy and the other guards, errors included."""

import pytest
from django.test import Client

from tests.cast import make_member

pytestmark = pytest.mark.django_db


@pytest.mark.parametrize(
    "path", ["/sign-in/", "/", "/plants/", "/plants/2026-9999-A/", "/nowhere/", "/health/"]
)
def test_every_answer_is_guarded(path: str) -> None:
    client = Client()
    client.force_login(make_member().user)
    headers = client.get(path).headers
    policy = dict(part.strip().split(" ", 1) for part in headers["Content-Security-Policy"].split(";"))
    assert policy["default-src"] == "'self'"
    assert policy["img-src"] == "'self' blob:"
    assert policy["object-src"] == policy["base-uri"] == policy["frame-ancestors"] == "'none'"
    assert policy["form-action"] == "'self'"
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["X-Frame-Options"] == "DENY"
    assert headers["Referrer-Policy"] == "same-origin"


def test_health_tells_nothing_but_that_it_is_well() -> None:
    answer = Client().get("/health/")
    assert (answer.status_code, answer.content) == (200, b"ok")
