"""The pages of hand-overs ask a fixed number of questions, at one row and at forty."""

from collections import Counter

import pytest

from frondkeep.society.models import Member
from specimens.models import Came
from specimens.services.handover_claims import agree
from specimens.services.handovers import refuse
from specimens.services.sowings import Source, record_sowing
from tests.cast import make_cultivar, make_meeting, make_plant
from tests.desk.test_query_budgets import AS_KEEPER, questions
from tests.specimens.services.handing import make_claim, make_offer, on_the_table

pytestmark = pytest.mark.django_db

# Hand-overs with their plants; whose spores were sown, what those plants are thought to be; which plants are
# visible; traits of their names and their own.
ROWS = Counter(
    specimens_handover=1,
    specimens_sporesource=1,
    specimens_specimen=2,
    specimens_identification=1,
    specimens_traitrecord=2,
)
LAID = Counter(society_meeting=1)


def of_each(ada: Member, jonas: Member, count: int) -> None:
    """Asked of Ada, waiting for Jonas, settled, and on the table; of plants raised from spores, too."""
    for _ in range(count):
        spores = record_sowing(sources=(Source(specimen=make_plant(ada, make_cultivar())),))
        plant = make_plant(ada, make_cultivar("Gold"), came=Came.SOWING, sowing=spores)
        make_claim(plant, jonas, from_keeper=ada.keeper)
        refuse(make_offer(make_plant(ada), ada, jonas), by=jonas.user)
        agree(make_claim(plant, jonas), by=ada.user)
        make_offer(make_plant(ada, make_cultivar("Gold"), came=Came.SOWING, sowing=spores), ada, jonas)
        on_the_table(plant, ada)


def test_the_list_and_the_table_ask_their_named_questions(ada: Member, jonas: Member) -> None:
    budgets = {
        # Asked, waiting for others, settled and how many.
        "/hand-overs/": AS_KEEPER + ROWS + ROWS + ROWS + Counter(specimens_handover=1) + LAID,
        f"/hand-overs/table/{make_meeting().pk}/": AS_KEEPER + ROWS + LAID + Counter(society_keeper=1),
    }
    of_each(ada, jonas, 1)
    asked = {address: questions(ada, address) for address in budgets}
    of_each(ada, jonas, 9)
    assert {address: questions(ada, address) for address in budgets} == asked
    assert asked == budgets
