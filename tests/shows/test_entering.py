"""Who may enter what, and why not."""

from datetime import timedelta

import pytest
from django.utils import timezone

from frondkeep.shows.models import Entry, EntryPlant, ShowClass
from frondkeep.shows.services.entries import EntryRefusedError, withdraw
from specimens.models import Came
from specimens.services.claims import claim_parentage
from specimens.services.sowings import Source
from specimens.services.specimens import end_specimen
from tests.cast import make_cultivar, make_genus, make_household, make_member, make_plant, make_species, when
from tests.shows.make import LONG_AGO, exhibitor_of, make_class, make_entry, make_show

pytestmark = pytest.mark.django_db
KEPT = {"acquired": when("2015", LONG_AGO)}


def reasons(*arguments: object, **options: object) -> list[str]:
    with pytest.raises(EntryRefusedError) as refused:
        make_entry(*arguments, **options)
    return refused.value.reasons


def test_a_member_enters_a_plant_they_keep() -> None:
    ada = make_member()
    plant = make_plant(ada, make_cultivar(), **KEPT)
    entry = make_entry(make_class(make_show()), ada, plant)
    assert [shown.specimen for shown in entry.plants.all()] == [plant]
    assert entry.number is None


def test_somebody_elses_plant_is_refused() -> None:
    ada, bram = make_member(), make_member("Bram")
    plant = make_plant(bram, make_cultivar(), **KEPT)
    assert reasons(make_class(make_show()), ada, plant) == [f"{plant.code} is not kept by this exhibitor."]


def test_a_household_shows_as_one() -> None:
    household = make_household()
    bram, mei = household.members.order_by("name")
    show = make_show()
    plant = make_plant(mei, make_cultivar(), **KEPT)
    entry = make_entry(make_class(show), bram, plant)
    assert entry.exhibitor == exhibitor_of(show, mei)
    assert entry.exhibitor.name == household.name


def test_a_dead_plant_is_refused() -> None:
    ada = make_member()
    plant = make_plant(ada, make_cultivar(), **KEPT)
    end_specimen(plant, version=plant.version, state="dead")
    assert f"{plant.code} is on record as dead." in reasons(make_class(make_show()), ada, plant)


@pytest.mark.parametrize(
    ("days", "refused"), [(200, False), (100, True)], ids=["kept long enough", "kept for three months"]
)
def test_a_plant_must_have_been_kept_for_six_months(days: int, refused: bool) -> None:
    ada, show = make_member(), make_show()
    since = show.date - timedelta(days=days)
    plant = make_plant(ada, make_cultivar(), acquired=when("then", since))
    if refused:
        assert "less than 6 months" in reasons(make_class(show), ada, plant)[0]
    else:
        assert make_entry(make_class(show), ada, plant)


def test_a_date_that_leaves_it_open_speaks_for_the_exhibitor() -> None:
    ada, show = make_member(), make_show()
    spring_to_now = when("this year", show.date - timedelta(days=300), show.date - timedelta(days=20))
    assert make_entry(make_class(show), ada, make_plant(ada, make_cultivar(), acquired=spring_to_now))


def test_another_genus_is_refused_with_the_name_it_bears() -> None:
    ada = make_member()
    plant = make_plant(ada, make_cultivar("Kingfisher", "Dryopteris"), **KEPT)
    said = reasons(make_class(make_show(), genus=make_genus("Platycerium")), ada, plant)
    assert said == [f"This class is for Platycerium; {plant.code} is Dryopteris ‘Kingfisher’."]


def test_kinds_of_classes_take_their_kinds_of_plants() -> None:
    ada, show = make_member(), make_show(most_in_class=9)
    cross = make_cultivar("Kettle Steam")
    parents = (Source(name=make_species("veitchii")), Source(name=make_species("hillii")))
    claim_parentage(cross, says="cross", parents=parents, ground="record")
    plants = {
        ShowClass.Wants.SPECIES: make_plant(ada, make_species("ridleyi"), **KEPT),
        ShowClass.Wants.HYBRID: make_plant(ada, cross, **KEPT),
        ShowClass.Wants.RAISED: make_plant(ada, make_species("wandae"), came=Came.SOWING, **KEPT),
    }
    classes = {wants: make_class(show, number, wants=wants) for number, wants in enumerate(plants, 1)}
    # The sporeling of a species is a species, too.
    fits = {(wants, wants) for wants in plants} | {(ShowClass.Wants.SPECIES, ShowClass.Wants.RAISED)}
    for wants, show_class in classes.items():
        for kind, plant in plants.items():
            if (wants, kind) not in fits:
                assert "This class wants" in reasons(show_class, ada, plant)[0]
    assert all(make_entry(classes[wants], ada, plant) for wants, plant in plants.items())


def test_one_plant_enters_a_show_once_until_it_is_withdrawn() -> None:
    ada, show = make_member(), make_show(most_in_class=3)
    plant, show_class = make_plant(ada, make_cultivar(), **KEPT), make_class(show)
    first = make_entry(show_class, ada, plant)
    assert reasons(show_class, ada, plant) == [f"{plant.code} is entered in this show already."]
    withdraw(first)
    assert make_entry(show_class, ada, plant)


def test_an_exhibitor_enters_a_class_as_often_as_the_show_allows() -> None:
    ada = make_member()
    show_class = make_class(make_show(most_in_class=1))
    make_entry(show_class, ada, make_plant(ada, make_cultivar(), **KEPT))
    assert "may enter this class once" in reasons(show_class, ada, make_plant(ada, make_species(), **KEPT))[0]


def test_an_exhibitor_enters_a_show_as_often_as_it_allows() -> None:
    ada, show = make_member(), make_show(most_entries=1)
    make_entry(make_class(show, 1), ada, make_plant(ada, make_cultivar(), **KEPT))
    said = reasons(make_class(show, 2), ada, make_plant(ada, make_species(), **KEPT))
    assert said == ["An exhibitor may enter 1 times in this show, and has."]


def test_after_closing_time_only_the_committee_enters() -> None:
    ada = make_member()
    show_class = make_class(make_show(entries_close_at=timezone.now() - timedelta(minutes=1)))
    plant = make_plant(ada, make_cultivar(), **KEPT)
    assert "closed" in reasons(show_class, ada, plant)[0]
    assert make_entry(show_class, ada, plant, overrule=True)


def test_an_entry_without_a_plant_is_refused_and_nothing_is_written() -> None:
    assert reasons(make_class(make_show()), make_member()) == ["Say which plant is shown."]
    assert not Entry.objects.exists()
    assert not EntryPlant.objects.exists()
