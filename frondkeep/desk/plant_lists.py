"""Plants in a list: what each card or line says, with a fixed number of queries for all of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from frondkeep.desk.finding import visible_ids, visible_photos
from frondkeep.desk.people import keeper_words
from frondkeep.desk.plant_facts import origin_line, parent_id
from frondkeep.society.models import User
from specimens.models import Photo, Specimen
from specimens.services.portrait_traits import sitters_for_plants
from specimens.services.shown_names import shown_name


@dataclass(frozen=True, slots=True)
class ListedPlant:
    """One plant as a card, a line or a row of an export shows it to one reader."""

    plant: Specimen
    origin: str
    keeper: str
    photo: Photo | None = None

    @property
    def detail(self) -> str:
        """How it came and who keeps it, for a card."""
        return " · ".join(part for part in (self.origin, self.kept) if part)

    @property
    def line(self) -> str:
        """The same, and what became of it, for one line."""
        return " · ".join(part for part in (self.detail, self.state) if part)

    @property
    def as_piece(self) -> str:
        """Of which kind, when, who keeps it: for the page of the plant it was taken from."""
        division = self.plant.division
        parts = (
            division.get_kind_display() if division else "",
            self.plant.acquired.words,
            self.kept,
            self.state,
        )
        return " · ".join(part for part in parts if part)

    @property
    def photo_words(self) -> str:
        """What the picture shows, for whoever cannot see it."""
        kind = "Drawing" if self.photo and self.photo.is_drawing else "Photo"
        return f"{kind} of {shown_name(self.plant).plain}, {self.plant.code}"

    @property
    def kept(self) -> str:
        return f"kept by {self.keeper}" if self.keeper else ""

    @property
    def state(self) -> str:
        return "" if self.plant.is_growing else self.plant.get_state_display()


def listed(plants: Iterable[Specimen], *, reader: User, photos: bool = True) -> list[ListedPlant]:
    """These plants, fetched `with_page_parts`, as the reader may read of them; four queries for all."""
    plants = list(plants)
    visible = visible_ids(reader, map(parent_id, plants))
    first = first_photos(plants, reader) if photos else {}
    if photos:
        seat(plants)
    return [
        ListedPlant(
            plant=plant,
            origin=origin_line(plant, visible=visible),
            keeper=keeper_words(plant.keeper, reader),
            photo=first.get(plant.pk),
        )
        for plant in plants
    ]


def seat(plants: list[Specimen]) -> None:
    """Give each plant its `sitter`, so that drawing its portrait asks nothing more; two queries for all."""
    sitters = sitters_for_plants(plants)
    for plant in plants:
        plant.sitter = sitters[plant.pk]


def first_photos(plants: list[Specimen], reader: User) -> dict[int, Photo]:
    """The newest photo of each plant that the reader may look at."""
    if not plants:
        return {}
    newest_last = visible_photos(reader).filter(specimen__in=plants).order_by("added_at", "pk")
    return {photo.specimen_id: photo for photo in newest_last}
