"""The curator's list of other views asks a fixed number of questions, however many wait."""

from __future__ import annotations

import pytest
from django.db import connection
from django.test.utils import CaptureQueriesContext

from specimens.models import Identification
from specimens.services.identifications import identify
from tests.cast import make_cultivar, make_curator, make_member, make_plant
from tests.desk.conftest import signed_in

pytestmark = pytest.mark.django_db
LOOKS = Identification.Ground.LOOKS


def test_other_views_ask_as_many_questions_for_twenty_as_for_one() -> None:
    jonas, imke = make_member("Jonas Wren"), make_curator()
    firm, other = make_cultivar("Silver Tassel"), make_cultivar("Other Tassel")

    def one_more() -> None:
        plant = make_plant(jonas, firm)
        identify(plant, name=firm, by=imke.user, ground=LOOKS)
        identify(plant, name=other, by=jonas.user, ground=LOOKS)

    def questions() -> int:
        client = signed_in(imke)
        with CaptureQueriesContext(connection) as asked:
            page = client.get("/proposals/")
        assert "Other Tassel" in page.content.decode()
        return len(asked)

    one_more()
    for_one = questions()
    for _ in range(20):
        one_more()
    assert Identification.objects.filter(standing="proposed").count() == 21
    # session, user, roles, member, keepers, the views with their plants, keepings and sources
    assert questions() == for_one <= 14
