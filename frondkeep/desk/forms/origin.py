"""The curator mends how a plant came."""

from __future__ import annotations

from typing import Any

from django import forms
from django.urls import reverse_lazy

from frondkeep.desk.searching.codes import code_meant, codes_one_slip_away
from specimens.models import Came, Division, Specimen
from specimens.services.specimens import PieceOf

WAYS = (Came.PIECE, Came.OUTSIDE, Came.WILD, Came.NOT_KNOWN)


class OriginForm(forms.Form):
    """Cleans to `piece_of` where it is a piece: of the plant of a code, or of one in words."""

    came = forms.ChoiceField(
        label="How it came", choices=[(way.value, way.label) for way in WAYS], widget=forms.RadioSelect
    )
    parent_code = forms.CharField(
        label="A piece of which plant",
        required=False,
        max_length=40,
        help_text="Its code, as 2026-0142-E. Empty if that plant is not on record.",
        widget=forms.TextInput(attrs={"data-suggest-url": reverse_lazy("suggest-plants")}),
    )
    parent_words = forms.CharField(label="That plant in words", required=False, max_length=200)
    kind = forms.ChoiceField(
        label="What was taken",
        choices=Division.Kind.choices,
        initial=Division.Kind.PUP,
        widget=forms.RadioSelect,
        required=False,
    )
    sport = forms.BooleanField(label="It came out different (a sport)", required=False)
    version = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, *args: Any, plant: Specimen, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.plant = plant
        division = plant.division
        self.initial = {"came": plant.came, "version": plant.version, "kind": Division.Kind.PUP}
        if division is not None:
            self.initial |= {
                "parent_code": division.parent.code if division.parent else "",
                "parent_words": division.parent_words,
                "kind": division.kind,
                "sport": division.sport,
            }

    def clean_parent_code(self) -> Specimen | None:
        """The plant of the code typed; a slip is answered."""
        typed = self.cleaned_data["parent_code"].strip()
        if not typed:
            return None
        found = Specimen.objects.filter(code=code_meant(typed)).first()
        if found is None:
            near = Specimen.objects.filter(code__in=codes_one_slip_away(typed)).values_list("code", flat=True)
            asked = f" Did you mean {' or '.join(near)}?" if near else ""
            raise forms.ValidationError(f"No plant has the code “{typed}”.{asked}")
        return found

    @property
    def piece_of(self) -> PieceOf | None:
        typed = self.cleaned_data
        if typed["came"] != Came.PIECE:
            return None
        return PieceOf(
            parent=typed["parent_code"],
            words=typed["parent_words"],
            kind=typed["kind"] or Division.Kind.NOT_KNOWN,
            sport=typed["sport"],
            by=self.plant.division.by if self.plant.division else None,
        )
