"""Loading the shipped names: staghorn species, other ferns, their synonyms by treatment, and traits."""

from __future__ import annotations

import tomllib
from dataclasses import dataclass, field
from importlib.resources import files
from typing import Any

from django.db import transaction

from specimens.changes import announce
from specimens.models import Name, Placement, Rank, Trait, TraitRecord, TraitState, Treatment
from specimens.services.names import write_out

Status = Placement.Status


@dataclass
class Loading:
    """What one loading found or made; saves each name once and announces all of them at the end."""

    names: dict[tuple[int, str, str, str], Name]
    states: dict[tuple[str, str], TraitState] = field(default_factory=dict)
    changed: list[int] = field(default_factory=list)

    def name(
        self, rank: str, epithet: str, parent: Name | None = None, author: str = "", **more: Any
    ) -> Name:
        """The name on record, with or without its author, else a new one."""
        place = (parent.pk if parent else 0, rank, epithet.casefold())
        found = self.names.get((*place, author.casefold())) or self.names.get((*place, ""))
        if found is None:
            found = Name(rank=rank, epithet=epithet, parent=parent, author=author, **more)
            write_out(found)
            found.save()
            self.names[*place, author.casefold()] = found
            self.changed.append(found.pk)
        return found

    def place(self, name: Name, treatment: Treatment, accepted: Name | None = None, **more: str) -> None:
        status = more.pop("status", Status.SYNONYM if accepted else Status.ACCEPTED)
        Placement.objects.get_or_create(
            name=name, treatment=treatment, defaults={"status": status, "accepted": accepted, **more}
        )

    def traits(self, name: Name, states: dict[str, str], source: str, doubtful: tuple[str, ...] = ()) -> None:
        """Record states that are not on record for the name yet."""
        for trait, state in states.items():
            said = "from memory, to be checked" if trait in doubtful else source
            TraitRecord.objects.get_or_create(
                name=name, state=self.states[trait, state], defaults={"source": said}
            )


@transaction.atomic
def load_reference_names() -> int:
    """Load all shipped names and traits; what is on record stays as it is. Returns how many names are new."""
    loading = Loading({key_of(name): name for name in Name.objects.standing()})
    load_traits(loading)
    follow = not Treatment.objects.filter(followed=True).exists()
    staghorns = read("platycerium.toml")
    treatment = Treatment.objects.get_or_create(
        name=staghorns["treatment"], defaults={"citation": staghorns["citation"], "followed": follow}
    )[0]
    load_staghorns(loading, staghorns, treatment)
    # One treatment is followed for all genera, so other ferns are placed in it as well.
    load_other_ferns(loading, read("other_genera.toml"), treatment)
    announce("names", loading.changed)
    return len(loading.changed)


def key_of(name: Name) -> tuple[int, str, str, str]:
    return (name.parent_id or 0, name.rank, name.epithet.casefold(), name.author.casefold())


def read(file_name: str) -> dict[str, Any]:
    return tomllib.loads((files("specimens.reference") / file_name).read_text("utf-8"))


def load_traits(loading: Loading) -> None:
    for order, row in enumerate(read("traits.toml")["trait"]):
        trait = Trait.objects.get_or_create(
            key=row["key"],
            defaults={
                "label": row["label"],
                "question": row["question"],
                "stable": row.get("stable", True),
                "order": order,
            },
        )[0]
        for place, (key, label) in enumerate(row["states"]):
            loading.states[trait.key, key] = TraitState.objects.get_or_create(
                trait=trait, key=key, defaults={"label": label, "order": place}
            )[0]


def load_staghorns(loading: Loading, data: dict[str, Any], treatment: Treatment) -> None:
    genus = loading.name(Rank.GENUS, data["genus"], author=data["author"])
    loading.place(genus, treatment)
    species = {
        row["epithet"]: load_staghorn(loading, genus, row, data["source"], treatment)
        for row in data["species"]
    }
    for row in data["species"]:
        accepted = species[row["epithet"]]
        for epithet, author in row.get("synonyms", []):
            loading.place(loading.name(Rank.SPECIES, epithet, genus, author), treatment, accepted)
        for epithet, author, source in row.get("misapplied", []):
            misapplied = loading.name(Rank.SPECIES, epithet, genus, author)
            loading.place(misapplied, treatment, accepted, status=Status.MISAPPLIED, source=source)
        for above, rank, epithet, author in row.get("below", []):
            loading.place(loading.name(rank, epithet, species[above], author), treatment, accepted)


def load_staghorn(
    loading: Loading, genus: Name, row: dict[str, Any], source: str, treatment: Treatment
) -> Name:
    made = loading.name(
        Rank.SPECIES, row["epithet"], genus, row["author"],
        home=row["home"], natural_group=row["group"], solitary=row.get("solitary", False),
    )  # fmt: skip
    loading.place(made, treatment)
    loading.traits(made, row["traits"], source, tuple(row.get("doubtful", ())))
    for form, notes in row.get("forms", []):
        loading.name(Rank.INFORMAL, form, made, notes=notes)
    return made


def load_other_ferns(loading: Loading, data: dict[str, Any], treatment: Treatment) -> None:
    for row in data["species"]:
        genus, epithet, author = row["name"]
        accepted = loading.name(Rank.SPECIES, epithet, loading.name(Rank.GENUS, genus), author)
        loading.place(accepted, treatment)
        loading.traits(accepted, row["traits"], "common practice")
        for was in row.get("was", []):
            loading.place(former_name(loading, was), treatment, accepted)
        for other, genus_there, epithet_there in row.get("elsewhere", []):
            elsewhere = Treatment.objects.get_or_create(name=other)[0]
            there = former_name(loading, [genus_there, epithet_there])
            loading.place(there, treatment, accepted)
            loading.place(there, elsewhere)
            loading.place(accepted, elsewhere, there)


def former_name(loading: Loading, was: list[str]) -> Name:
    genus, epithet, *below = was
    species = loading.name(Rank.SPECIES, epithet, loading.name(Rank.GENUS, genus))
    return loading.name(below[0], below[1], species) if below else species
