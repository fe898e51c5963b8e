"""An import is written whole or not at all."""

import pytest

from frondkeep.desk.importing import writing
from frondkeep.desk.importing.writing import write_plan
from frondkeep.society.models import Member
from specimens.models import CodeCounter, Specimen, SporeSowing
from tests.desk.importing.sheets import imported, planned, plants

pytestmark = pytest.mark.django_db


def counts() -> tuple[int, ...]:
    return (
        Member.objects.count(),
        Specimen.objects.count(),
        SporeSowing.objects.count(),
        CodeCounter.objects.count(),
        Specimen.history.count(),
    )


def test_an_error_at_the_last_row_leaves_nothing_behind(monkeypatch: pytest.MonkeyPatch) -> None:
    plan = planned(
        members="No,Full name\nM1,Ada Quill",
        plants=plants("F1,x,,Ada Quill,,,bought,,,,", "F2,x,,Ada Quill,,,pup,F1,,,"),
        sowings="Sowing no,Sown,Spores of\nS1,2020,F2",
    )
    before = counts()

    def fail(kind: str, done: int, total: int) -> None:
        if kind.startswith("what is computed"):
            raise RuntimeError("the disk is full")

    with pytest.raises(RuntimeError, match="the disk is full"):
        write_plan(plan, by=None, tell=fail)
    assert counts() == before
    assert before == (0, 0, 0, 0, 0)


def test_files_that_refer_to_each_other_are_one_import() -> None:
    imported(
        members="No,Full name\nM1,Ada Quill",
        sowings="Sowing no,Sown,Spores of,Sown by\nS1,2020,F1,Ada Quill",
        plants=plants("F2,x,,Ada Quill,,2021,from spores,S1,,,", "F1,x,,Ada Quill,,,bought,,,,"),
    )
    assert Specimen.objects.get(society_number="F2").sowing.sources.get().specimen.society_number == "F1"


def test_what_is_computed_is_told_once_for_all_rows(monkeypatch: pytest.MonkeyPatch) -> None:
    from lineage.models import LineageNode

    imported(
        members="No,Full name\nM1,Ada Quill",
        plants=plants(
            "F1,x,,Ada Quill,,,bought,,,,", *(f"F{n},x,,Ada Quill,,,pup,F{n - 1},,," for n in range(2, 9))
        ),
    )
    last = LineageNode.objects.get(specimen__society_number="F8")
    assert last.clonal_steps == 7


def test_a_refused_row_is_left_out_and_the_rest_is_written() -> None:
    plan = planned(
        members="No,Full name\nM1,Ada Quill\nM2,",
        plants=plants("F1,x,,Ada Quill,,,bought,,,,", "F2,x,,Nemo,,,bought,,,,"),
    )
    assert plan.counts() == {"new": 2, "refused": 2}
    write_plan(plan, by=None)
    assert [plant.society_number for plant in Specimen.objects.all()] == ["F1"]


def test_rows_are_written_in_batches_no_larger_than_one_allows(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(writing, "AT_ONCE", 2)
    imported(
        members="No,Full name\nM1,Ada Quill",
        plants=plants(*(f"F{n},x,,Ada Quill,,,bought,,,," for n in range(5))),
    )
    assert Specimen.objects.count() == 5
