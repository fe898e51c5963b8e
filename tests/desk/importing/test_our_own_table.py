"""The table of plants that we write is read again as the cells it was made from."""

import pytest

from frondkeep.desk.importing.headings import understand
from frondkeep.desk.importing.intake import read_file
from frondkeep.society.models import Member
from specimens.models import Name
from tests.cast import make_plant
from tests.desk.conftest import signed_in


@pytest.mark.django_db
@pytest.mark.parametrize(
    "tag", ["=1+1", "+4", "-", "@home", "'=quoted", "‘Silver Tassel’", "'Silver Tassel'"]
)
def test_what_was_made_inert_comes_back_as_it_stood(ada: Member, tassel: Name, tag: str) -> None:
    plant = make_plant(ada, tassel, label_text=tag)
    (sheet,) = read_file("plants.csv", signed_in(ada).get("/plants.csv").getvalue())
    table = understand(sheet)
    ((_, cells),) = table.records()
    assert table.kind == "plants"
    assert (cells["code"], cells["label"]) == (plant.code, tag)
