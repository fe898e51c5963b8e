"""All that a page says of the lineage of one plant, or of the plant behind a cultivar name."""

from __future__ import annotations

from dataclasses import dataclass

from frondkeep.society.models import User
from lineage.models import LineageNode
from lineage.services.ancestry import ancestry_of
from lineage.services.branches import ListLine, list_lines
from lineage.services.chart import Chart, draw
from lineage.services.facts import PlantLineage, facts_of_name, facts_of_specimen
from specimens.models import Name, Specimen


@dataclass(frozen=True, slots=True)
class ShownLineage:
    """Facts, drawing and list of one plant, as one reader may see them."""

    facts: PlantLineage
    chart: Chart
    lines: list[ListLine]

    @property
    def has_ancestors(self) -> bool:
        return len(self.lines) > 1


def lineage_of_plant(specimen: Specimen, reader: User) -> ShownLineage | None:
    """What the template `lineage/plant_lineage.html` shows; None only where it was never computed."""
    return _shown(facts_of_specimen(specimen, reader=reader), reader)


def lineage_of_name(name: Name, reader: User) -> ShownLineage | None:
    """The same for a cultivar name kept by division; None for a name that is no plant."""
    return _shown(facts_of_name(name, reader=reader), reader)


def chart_of(specimen: Specimen, user: User) -> Chart | None:
    """The drawing of a plant's ancestors, as the reader may see them."""
    shown = lineage_of_plant(specimen, user)
    return shown.chart if shown else None


def _shown(facts: PlantLineage | None, reader: User) -> ShownLineage | None:
    if facts is None:
        return None
    relatives = ancestry_of(LineageNode.objects.get(pk=facts.node_id), reader)
    return ShownLineage(facts, draw(relatives), list_lines(relatives))
