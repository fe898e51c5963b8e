"""A plant died, left, cannot be found, was stolen — or is still here."""

from __future__ import annotations

from typing import Any

from django import forms

from frondkeep.society.forms import PartialDateFormField
from specimens.models import Specimen, State

ENDS = (State.DEAD, State.LEFT, State.LOST, State.STOLEN, State.MISTAKE)
WORDS = {State.DEAD: "it died", State.LEFT: "it left the society", State.LOST: "I cannot find it"}


class EndedForm(forms.Form):
    state = forms.ChoiceField(label="What became of it", widget=forms.RadioSelect)
    on = PartialDateFormField(label="When")
    reason = forms.CharField(
        label="Why, as far as you know",
        required=False,
        max_length=300,
        help_text="Rot, frost, given to a botanic garden … It helps others.",
    )
    version = forms.IntegerField(widget=forms.HiddenInput)

    def __init__(self, *args: Any, plant: Specimen, **kwargs: Any) -> None:
        kwargs.setdefault("initial", {"version": plant.version})
        super().__init__(*args, **kwargs)
        ends = [(state.value, WORDS.get(state, state.label)) for state in ENDS]
        here = [] if plant.is_growing else [(State.GROWING.value, "it is here, and grows")]
        self.fields["state"].choices = [*here, *ends]
