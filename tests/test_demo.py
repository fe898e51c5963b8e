"""The demo society: imported whole from its spreadsheets, once, with everything the answer keys speak of."""

import csv
from collections.abc import Iterator
from pathlib import Path

import pytest
from django.core.management import CommandError
from django.db import transaction
from pytest_django.plugin import DjangoDbBlocker

from frondkeep.desk import demonstration
from frondkeep.desk.importing.folder import read_tables
from frondkeep.desk.importing.planning import Planning
from frondkeep.society.models import Household, Meeting, Member, Role, Society, User
from lineage.models import LineageNode
from specimens.models import Cross, Name, ParentageClaim, Photo, Rank, Specimen, SporeSowing, State
from specimens.services.reading import KnownNames
from specimens.services.reference_names import load_reference_names
from specimens.services.shown_names import shown_name
from tests.cast import make_member

FOLDER = demonstration.FOLDER


@pytest.fixture(scope="module")
def society(django_db_setup: None, django_db_blocker: DjangoDbBlocker) -> Iterator[None]:
    """The whole society, imported once for this module and undone behind it."""
    with django_db_blocker.unblock(), transaction.atomic():
        load_reference_names()
        demonstration.import_society(lambda words: None)
        yield
        transaction.set_rollback(True)


def answers(name: str) -> list[dict[str, str]]:
    with (FOLDER / name).open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


def plant(number: str) -> Specimen:
    return Specimen.objects.get(society_number=number)


@pytest.mark.usefixtures("society")
class TestTheSociety:
    def test_everybody_and_everything_is_there(self) -> None:
        assert Member.objects.count() == 45
        assert Household.objects.count() == 3
        assert Meeting.objects.count() == 24
        assert Specimen.objects.count() == 572 + 150
        assert SporeSowing.objects.exclude(old_number="").count() == 40
        assert Cross.objects.count() == 12
        assert Name.objects.cultivars().filter(checked=True).count() == 137

    def test_the_same_files_again_change_nothing_and_say_so(self) -> None:
        before = (Specimen.history.count(), Name.history.count(), Member.history.count())
        plan = Planning(read_tables(FOLDER / name for name in demonstration.FILES)).plan()
        assert set(plan.fates()) == {"on record"}
        assert [row.notes for row in plan.rows if row.notes] == []
        assert (Specimen.history.count(), Name.history.count(), Member.history.count()) == before

    def test_every_plant_is_in_the_lineage(self) -> None:
        assert LineageNode.objects.filter(specimen__isnull=False).count() == Specimen.objects.count()

    @pytest.mark.parametrize("row", answers("planted.csv"), ids=lambda row: row["name_b"])
    def test_planted_look_alikes_are_two_names(self, row: dict[str, str]) -> None:
        known = KnownNames.load()
        found = []
        for written in (row["name_a"], row["name_b"]):
            genus, epithet = written.split(" ", 1)
            names = known.by_key.get(
                ("=cultivar", genus.casefold(), known.word(epithet[1:-1], written=True)), []
            )
            found += [name.pk for name in names]
        assert len(set(found)) == 2

    @pytest.mark.parametrize("row", answers("contradictions.csv"), ids=lambda row: row["record"])
    def test_records_that_disagree_are_taken_as_they_are(self, row: dict[str, str]) -> None:
        assert plant(row["record"])

    def test_most_plants_are_named_and_none_by_its_sowing(self) -> None:
        unnamed = Specimen.objects.filter(identification__name=None).count()
        assert unnamed < Specimen.objects.count() / 8
        assert not Name.objects.filter(rank=Rank.CULTIVAR, epithet__regex=r"^S\d").exists()

    def test_tags_brought_no_name_that_the_lists_have_not(self) -> None:
        brought = Name.objects.not_yet_checked().in_reading_order()
        assert [str(name) for name in brought] == [
            "Adiantum capillus-veneris",
            "Asplenium nidus",
            "Asplenium trichomanes",
        ]

    def test_ex_a_clone_is_shown_as_such_and_a_bare_clone_name_as_well(self) -> None:
        shown = [
            shown_name(one).plain
            for one in Specimen.objects.filter(society_number__in=["F304", "F478"]).with_page_parts()
        ]
        assert sorted(shown) == ["Phlebodium aureum ex ‘Quarry Mist’", "Platycerium ex ‘Clerestory’"]

    def test_a_pup_given_to_a_visitor_left_the_society(self) -> None:
        assert plant("D20").state == State.LEFT
        assert plant("D20").division.sport

    def test_a_household_and_the_society_keep_plants(self) -> None:
        assert plant("F10").keeper.name == "Thornwick household"
        assert plant("F70").keeper.name == "The society"

    def test_the_first_plants_of_names_are_known(self) -> None:
        assert Name.objects.get(epithet="Ballroom Curtain").original_plant == plant("F5")

    def test_a_mixed_sowing_has_all_its_sources(self) -> None:
        sources = SporeSowing.objects.get(old_number="S5").sources.all()
        assert [(s.specimen and s.specimen.society_number, str(s.name or "")) for s in sources] == [
            ("F86", ""),
            ("F103", ""),
            (None, "Platycerium ‘Copper Lamplight’"),
        ]

    def test_what_was_formerly_thought_is_kept_beside_what_dna_said(self) -> None:
        claims = ParentageClaim.objects.filter(specimen=plant("F370")).order_by("pk")
        assert [(c.says, c.ground, c.standing) for c in claims] == [
            ("self", "looks", "superseded"),
            ("cross", "dna", "current"),
        ]

    def test_the_moved_genus_stays_as_it_is_written(self) -> None:
        genera = Name.objects.filter(epithet="Quarry Mist").values_list("genus__epithet", flat=True)
        assert set(genera) == {"Phlebodium", "Polypodium"}

    def test_members_with_an_address_may_sign_in_and_hold_their_offices(self) -> None:
        assert User.objects.count() == Member.objects.exclude(email="").count()
        assert {user.name for user in User.objects.filter(roles_held__role=Role.CURATOR)} == {"Ada Thornwick"}


@pytest.fixture
def folder(settings, tmp_path: Path) -> Path:
    settings.DATA_DIR = tmp_path
    settings.MEDIA_ROOT = tmp_path / "photos"
    return tmp_path


@pytest.mark.django_db
def test_a_real_society_is_left_alone(folder: Path) -> None:
    make_member()
    with pytest.raises(CommandError, match="holds a society already"):
        demonstration.fill(lambda words: None)


@pytest.mark.django_db
def test_only_a_demo_is_removed(folder: Path) -> None:
    with pytest.raises(CommandError, match="only removes a demo"):
        demonstration.clear()


@pytest.mark.django_db
def test_filling_twice_makes_one_society_with_drawings_and_one_door_for_each_role(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    load_reference_names()
    monkeypatch.setattr(demonstration, "FILES", ("members.xlsx", "meetings.csv"))
    monkeypatch.setattr(demonstration, "DRAWINGS", 2)
    said: list[str] = []
    demonstration.fill(said.append)
    demonstration.fill(said.append)
    assert Member.objects.count() == 45
    assert Society.current().name == "Marrowmere Fern Society"
    doors = demonstration.open_doors()
    assert [door.role for door in doors] == [*(role.label for role in Role), "member"]
    assert all(User.objects.get(name=door.name).check_password(demonstration.PASSWORD) for door in doors)


@pytest.mark.django_db
def test_drawings_are_marked_as_drawings(folder: Path) -> None:
    from tests.cast import make_plant, make_species

    keeper = make_member()
    for _ in range(3):
        make_plant(keeper, make_species())
    assert demonstration.draw_photographs(2) == 2
    assert {photo.is_drawing for photo in Photo.objects.all()} == {True}
