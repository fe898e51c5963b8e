"""Which origin a recorded plant has: its division, the current claim, its sowing, its name — the first that applies."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from lineage.core import PedigreeError
from lineage.models import Origin
from lineage.services.definitions import NOT_KNOWN, Definition, Key
from lineage.services.name_origins import NameOrigins, meaning_of, presumed
from lineage.services.records import ClaimRecord, PlantRecord, Records, SowingRecord
from specimens.models import Identification, SporeSowing

DOUBTED = (Identification.Qualifier.AFF, Identification.Qualifier.DOUBT)
ABOUT_THE_PIECE = ("sport", "piece")


class PlantOrigins:
    """Definitions of the plants of some records. A pot of several has no clone: its pieces share its origin."""

    def __init__(self, records: Records, by_name: NameOrigins) -> None:
        self.records = records
        self.by_name = by_name
        self.claims = self._claims_on_first_plants()

    def of_plant(self, plant: PlantRecord) -> Definition:
        """The origin of a plant. Raises PedigreeError where pots are pieces of each other."""
        line = self._with_pots_above(plant)
        recorded = next(filter(None, map(self._on_record, line)), None)
        if recorded is not None:
            return recorded
        named = (self._by_identification(each) for each in line)
        return next((one for one in named if one.origin != Origin.UNKNOWN), NOT_KNOWN)

    def _with_pots_above(self, plant: PlantRecord) -> list[PlantRecord]:
        """The plant, the pot of several it was taken from, the pot that came from, and so on."""
        line = [plant]
        seen = {plant.id}
        while (pot := self._pot_above(line[-1])) is not None:
            if pot.id in seen:
                raise PedigreeError(
                    "Pots that are pieces of each other.", [Key.plant(one.id) for one in line]
                )
            seen.add(pot.id)
            line.append(pot)
        return line

    def _parent(self, plant: PlantRecord) -> PlantRecord | None:
        return self.records.plants.get(plant.piece_of) if plant.piece_of is not None else None

    def _pot_above(self, plant: PlantRecord) -> PlantRecord | None:
        parent = self._parent(plant)
        return parent if parent is not None and parent.is_pot else None

    def _is_clone_piece(self, plant: PlantRecord) -> bool:
        return plant.piece_of is not None and self._pot_above(plant) is None

    def _on_record(self, plant: PlantRecord) -> Definition | None:
        if plant.piece_of is not None and self._is_clone_piece(plant):
            parents = (Key.plant(plant.piece_of),)
            return Definition(Origin.DIVISION.value, parents, sport=self._is_sport(plant))
        claim = self.claims.get(plant.id)
        claimed = self.by_name.of_claim(claim) if claim else None
        sowing = self.records.sowings.get(plant.sowing) if plant.sowing is not None else None
        return claimed or (self._of_sowing(sowing) if sowing else None)

    def _is_sport(self, plant: PlantRecord) -> bool:
        own = self.records.plant_claims.get(plant.id)
        return plant.sport or (own is not None and own.says == "sport")

    def _of_sowing(self, sowing: SowingRecord) -> Definition | None:
        """None where nothing is said of whose spores they were."""
        parents = _distinct(self.by_name.parent(source) for source in sowing.sources)
        if not parents:
            return None
        if sowing.determined == SporeSowing.Determined.HYBRID:
            return _hybrid_of(parents)
        if sowing.determined == SporeSowing.Determined.APOGAMOUS and len(parents) == 1:
            return Definition(Origin.APOGAMOUS.value, parents) if parents[0] else None
        origin = Origin.SELF if len(parents) == 1 else Origin.MIXED
        as_sown = sowing.determined == SporeSowing.Determined.AS_SOWN
        return Definition(origin.value, parents, as_sown=as_sown)

    def _by_identification(self, plant: PlantRecord) -> Definition:
        if plant.name is None or plant.qualifier in DOUBTED:
            return NOT_KNOWN
        clone = meaning_of(plant.name, self.records.names).clone
        if clone is None:
            origin = self.by_name.of_name(plant.name, f"specimen:{plant.id}")
        elif self.by_name.original_of(self.records.names[clone]) == plant.id:
            return self.by_name.before_the_original(self.records.names[clone])
        elif plant.from_spores:
            # A sporeling never bears its parent's clonal name: it was raised from that clone.
            origin = Definition(Origin.SELF.value, (Key.name(clone),), as_sown=True)
        else:
            origin = self.by_name.of_name(plant.name, f"specimen:{plant.id}")
        return presumed(origin) if plant.qualifier or plant.from_spores else origin

    def _claims_on_first_plants(self) -> dict[int, ClaimRecord]:
        """The claim that counts for each plant.

        What is claimed of a piece holds for its whole clone, so it is kept on the first plant or the
        nearest sport; that plant's own claim goes first, then the newest.
        """
        kept = {
            pk: claim
            for pk, claim in self.records.plant_claims.items()
            if pk in self.records.plants and not self._is_clone_piece(self.records.plants[pk])
        }
        carried = {pk: c for pk, c in self.records.plant_claims.items() if c.says not in ABOUT_THE_PIECE}
        for pk, claim in sorted(carried.items(), key=lambda item: -item[1].id):
            target = self._first_plant(pk)
            if target is not None:
                kept.setdefault(target, claim)
        return kept

    def _first_plant(self, pk: int) -> int | None:
        plant = self.records.plants.get(pk)
        seen: set[int] = set()
        while plant is not None and self._is_clone_piece(plant) and not self._is_sport(plant):
            if plant.id in seen:
                return None  # pieces of each other: told of when the pedigree is made
            seen.add(plant.id)
            plant = self._parent(plant)
        return plant.id if plant is not None else None


def _hybrid_of(parents: tuple[Key | None, ...]) -> Definition:
    if len(parents) == 1:
        return Definition(Origin.CROSS.value, (*parents, None))
    if len(parents) == 2:
        return Definition(Origin.CROSS.value, parents)
    return replace(Definition(Origin.MIXED.value, parents), selfs_excluded=True)


def _distinct(parents: Iterable[Key | None]) -> tuple[Key | None, ...]:
    """Each known plant once; two plants not known are two."""
    given = list(parents)
    return tuple(p for place, p in enumerate(given) if p is None or p not in given[:place])
