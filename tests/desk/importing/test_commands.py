"""`manage.py import_sheets`: told first, written only when confirmed."""

from io import StringIO
from pathlib import Path

import pytest
from django.core.management import CommandError, call_command

from specimens.models import Specimen
from tests.desk.importing.sheets import csv_bytes, plants

pytestmark = pytest.mark.usefixtures("ada")


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    path = tmp_path / "plants.csv"
    path.write_bytes(csv_bytes(plants("F2,x,,Ada Quill,,2020,bought,,,,", "F3,x,,Nemo,,,bought,,,,")))
    return path


def run(*words: object) -> str:
    out = StringIO()
    call_command("import_sheets", *map(str, words), stdout=out)
    return out.getvalue()


def test_without_confirmation_it_only_tells(sheet: Path) -> None:
    told = run(sheet)
    assert "plants.csv: 1 new, 0 on record, 1 not taken" in told
    assert "plants.csv, row 3: F3 x: Kept by: “Nemo”" in told
    assert "Nothing is written yet" in told
    assert Specimen.objects.count() == 0


def test_confirmed_it_writes_and_again_it_finds_nothing_new(sheet: Path) -> None:
    assert "Written: 1 rows." in run(sheet, "--confirm")
    assert Specimen.objects.get().society_number == "F2"
    assert "plants.csv: 0 new, 1 on record, 1 not taken" in run(sheet, "--confirm")


def test_a_file_that_cannot_be_read_is_an_error_in_words(tmp_path: Path) -> None:
    (tmp_path / "x.csv").write_bytes(b"")
    with pytest.raises(CommandError, match="is empty"):
        run(tmp_path / "x.csv")
    with pytest.raises(CommandError):
        run(tmp_path / "not there.csv")


def test_columns_nobody_recognises_are_an_error_in_words(tmp_path: Path) -> None:
    (tmp_path / "bills.csv").write_bytes(b"what,how much\nlamps,12\n")
    with pytest.raises(CommandError, match=r"do not recognise the columns of bills\.csv"):
        run(tmp_path / "bills.csv")


def test_an_importer_who_does_not_sign_in_here_is_an_error(sheet: Path) -> None:
    with pytest.raises(CommandError, match="Nobody signs in as Nix"):
        run(sheet, "--by", "Nix")
