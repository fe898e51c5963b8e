"""Records that disagree, put in on purpose, with the answer key that lists them."""

from datetime import date

from demo_data.calendar_words import rough_words
from demo_data.cultivars import BY_NAME
from demo_data.divisions import add_piece
from demo_data.founders import piece_of
from demo_data.people import BY_FIRST
from demo_data.plants import Garden, Plant, Sowing
from demo_data.special_cases import oldest
from demo_data.spreadsheets import Row

OTHER_NAME = "a piece under another name than its parent, no sport"


class Contradictions:
    """Puts the disagreeing records into a finished garden and remembers them for the answer key."""

    HEADINGS = ("file", "record", "other", "kind", "why")

    def __init__(self, garden: Garden) -> None:
        self.garden = garden
        self._found: list[tuple[str, Plant, Plant | str, str, str]] = []

    def plant_all(self) -> None:
        """Add every one of them."""
        self._too_early()
        self._after_death()
        self._before_sowing()
        self._pup_of_a_solitary()
        self._sporeling_under_a_clone_name()
        self._pieces_under_another_name()
        self._logged_twice()
        self._one_name_for_two()

    def _note(
        self, plant: Plant, other: Plant | str, kind: str, why: str, *, file: str = "plants.csv"
    ) -> None:
        for one in (plant, other):
            if isinstance(one, Plant):
                one.numbered = True
        self._found.append((file, plant, other, kind, why))

    def _parent_and_piece(self, name: str, bought: date, taken: date) -> tuple[Plant, Plant]:
        """Add a plant bought on one day and a piece of it taken on another."""
        parent = self.garden.add(BY_NAME[name], "outside", bought, BY_FIRST["Lotte"].name, source="swap")
        piece = piece_of(self.garden, parent, taken, BY_FIRST["Nikhil"].name)
        parent.when, piece.when = f"{bought:%B %Y}", f"{taken:%B %Y}"
        return parent, piece

    def _too_early(self) -> None:
        name = "Platycerium 'Umbrella Stand'"
        parent, piece = self._parent_and_piece(name, date(2019, 6, 2), date(2017, 4, 10))
        self._note(piece, parent, "date", "a pup dated before its parent was acquired")

    def _after_death(self) -> None:
        name = "Platycerium 'Joiner's Bench'"
        parent, piece = self._parent_and_piece(name, date(2014, 3, 20), date(2022, 5, 3))
        parent.state, parent.gone = "dead", date(2018, 2, 1)
        parent.gone_when, parent.last_seen = "February 2018", "2017"
        self._note(piece, parent, "date", "a pup dated after its parent had died")

    def _before_sowing(self) -> None:
        sowing = next(
            s for s in self.garden.sowings if s.sown.year > 2017 and self._raised(s) and len(s.sources) == 1
        )
        plant = self.garden.add(
            sowing.sources[0].species,
            "spores",
            date(2015, 9, 12),
            BY_FIRST["Hamish"].name,
            source=sowing.by.name,
            sowing=sowing,
        )
        plant.when = "12 September 2015"
        self._note(plant, sowing.number, "date", "a sporeling dated before its sowing")

    def _pup_of_a_solitary(self) -> None:
        parent = self.garden.of("Platycerium superbum", before=date(2016, 1, 1))[0]
        piece = piece_of(self.garden, parent, date(2020, 7, 9), BY_FIRST["Esperanza"].name)
        piece.tag, piece.believed = "superbum pup", "Platycerium superbum"
        piece.remarks = "a real pup, I swear"
        piece.when = rough_words(piece.got, self.garden.chance) or "2020"
        self._note(piece, parent, "solitary", "a pup on a species that makes none: a question, no error")

    def _sporeling_under_a_clone_name(self) -> None:
        sowing = next(s for s in self.garden.sowings if s.sources and s.sources[0].epithet == "Clerestory")
        plant = self._raised(sowing)[0]
        name = sowing.sources[0].named
        plant.tag, plant.believed, plant.pot = sowing.sources[0].epithet, name, ""
        self._note(
            plant,
            sowing.number,
            "name",
            "a sporeling under the name of its parent, which is kept by division",
        )

    def _pieces_under_another_name(self) -> None:
        for plant in self.garden.plants:
            if plant.how == "piece" and plant.parent and plant.parent.kind != plant.kind:
                self._note(plant, plant.parent, "name", OTHER_NAME)
        bell = oldest(self.garden, "Platycerium 'Chapel Bell'")
        piece = add_piece(self.garden, bell, date(2021, 6, 1))
        piece.kind, piece.tag = BY_NAME["Platycerium 'Thursday's Find'"], "Platycerium 'Thursday's Find'"
        self._note(piece, bell, "name", OTHER_NAME, file="pieces.xlsx")

    def rows(self) -> list[Row]:
        """The answer key; call it when the plants have their numbers."""
        rows: list[Row] = [self.HEADINGS]
        for file, plant, other, kind, why in self._found:
            rows.append([file, plant.number, other if isinstance(other, str) else other.number, kind, why])
        return rows

    def _raised(self, sowing: Sowing) -> list[Plant]:
        """The plants of a sowing of which nothing further was taken or sown."""
        sown = {id(source) for other in self.garden.sowings for source in other.sources}
        raised = [plant for plant in self.garden.plants if plant.sowing is sowing]
        return [plant for plant in raised if not plant.children and id(plant) not in sown]

    def _logged_twice(self) -> None:
        """Two plants that their keepers wrote down a second time."""
        plain = [
            p
            for p in self.garden.plants
            if p.how == "outside" and p.epithet and p.source and p.when and not p.children
        ]
        for plant in (plain[10], plain[-10]):
            again = self.garden.add(plant.kind, plant.how, plant.got, plant.keeper, source=plant.source)
            again.when, again.tag, again.believed = plant.when, plant.epithet, plant.believed
            self._note(
                again, plant, "twice", "one keeper, one name, one source, one date: perhaps logged twice"
            )

    def _one_name_for_two(self) -> None:
        """A second plant under a cultivar's name, of other parents than the raiser's own."""
        first = oldest(self.garden, "Platycerium 'Oilskin'")
        other = self.garden.add(
            first.kind, "spores", date(2021, 4, 18), BY_FIRST["Priya"].name, source="Greenlatch Nursery"
        )
        other.parent_words, other.when = "the nursery's sowing, alcicorne x ellisii", "18/4/2021"
        other.tag, other.believed = "Platycerium 'Oilskin'", "Platycerium 'Oilskin'"
        other.remarks = "forks in two only, Yusuf's does not"
        self._note(other, first, "two plants", "one name, other parents: perhaps two plants under one name")
