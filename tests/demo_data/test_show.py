"""The show to come: twenty-four classes, some seventy entries, five that break a rule."""

from collections import Counter

from tests.demo_data.files import read

CLASSES = read("schedule.csv")
ENTRIES = read("entries.csv")
PROBLEMS = read("show_problems.csv")
PLANTS = {row["Acc. No"]: row for row in read("plants.csv") if row["Acc. No"]}


def test_twenty_four_classes_in_five_sections() -> None:
    assert [row["Class no."] for row in CLASSES] == [str(number) for number in range(1, 25)]
    assert len({row["Section"] for row in CLASSES}) == 5


def test_the_show_closes_two_days_before_it_opens() -> None:
    assert {row["Date of show"] for row in CLASSES} == {"12 December 2026"}
    assert {row["Entries close"] for row in CLASSES} == {"10 December 2026"}


def test_some_seventy_entries_in_every_class() -> None:
    assert 65 <= len(ENTRIES) <= 80
    assert {row["Class"] for row in ENTRIES} == {row["Class no."] for row in CLASSES}


def test_one_entry_an_exhibitor_and_class_and_six_in_all() -> None:
    assert max(Counter((row["Class"], row["Exhibitor"]) for row in ENTRIES).values()) == 1
    assert max(Counter(row["Exhibitor"] for row in ENTRIES).values()) <= 6


def test_partners_show_as_one() -> None:
    paired = {row["Full name"] for row in read("members.xlsx") if row["Household"]}
    assert not paired & {row["Exhibitor"] for row in ENTRIES}


def test_entries_give_the_number_of_plants_wanted() -> None:
    wanted = {row["Class no."]: int(row["How many"] or 1) for row in CLASSES}
    faulty = {(row["class"], row["exhibitor"]) for row in PROBLEMS}
    for row in ENTRIES:
        if (row["Class"], row["Exhibitor"]) not in faulty:
            assert len(row["Plant"].split("; ")) == wanted[row["Class"]], row


def test_plants_entered_by_number_are_growing_unless_listed() -> None:
    faulty = {row["plant"] for row in PROBLEMS}
    for row in ENTRIES:
        for number in row["Plant"].split("; "):
            if number in PLANTS and row["Plant"] not in faulty:
                assert PLANTS[number]["State"] in ("growing", "alive", "ok", ""), row


def test_some_plants_are_entered_by_typed_name() -> None:
    assert sum("'" in row["Plant"] for row in ENTRIES) >= 10


def test_every_faulty_entry_is_entered() -> None:
    entered = {(row["Class"], row["Exhibitor"], row["Plant"]) for row in ENTRIES}
    assert {(row["class"], row["exhibitor"], row["plant"]) for row in PROBLEMS} <= entered
    assert len(PROBLEMS) == 5
