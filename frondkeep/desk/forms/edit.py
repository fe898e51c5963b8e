"""Changing a plant's own record."""

from __future__ import annotations

from datetime import date
from typing import Any

from django import forms
from django.utils import timezone

from frondkeep.society.forms import PartialDateFormField
from frondkeep.society.models import User
from specimens.models import Specimen
from specimens.naming.dates import PartialDate
from specimens.naming.labels import LabelTooLong, clean_label

CURATORS_ALONE = ("society_number",)
KEEPERS_ALONE = ("growing_place",)


class EditPlantForm(forms.ModelForm):
    """The fields a keeper or the curator may change; a growing place is its keeper's alone to read and write."""

    acquired = PartialDateFormField(label="When it came")
    version = forms.IntegerField(widget=forms.HiddenInput)

    class Meta:
        model = Specimen
        fields = (
            "label_text",
            "holds",
            "from_words",
            "meeting",
            "mount",
            "growing_place",
            "own_number",
            "society_number",
            "now_with",
            "last_seen_alive",
            "seen_by",
            "notes",
        )
        widgets = {
            "holds": forms.RadioSelect,
            "seen_by": forms.RadioSelect,
            "notes": forms.Textarea(attrs={"rows": 4}),
            "last_seen_alive": forms.DateInput(format="%d/%m/%Y", attrs={"inputmode": "numeric"}),
        }
        help_texts = {
            "label_text": "Letter for letter, mistakes and all.",
            "last_seen_alive": "Day, month, year: 14/11/2026.",
            "growing_place": "Only you and your household read this.",
            "from_words": "A nursery, a friend elsewhere. Read by you and the curator.",
        }
        labels = {"label_text": "What the tag says", "holds": "The pot holds"}

    field_order = ("label_text", "acquired", "from_words", "meeting")

    def __init__(self, *args: Any, user: User, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        plant: Specimen = self.instance
        self.fields["meeting"].empty_label = "none of these, or no meeting"
        self.initial |= {"acquired": plant.acquired, "version": plant.version}
        self.fields["last_seen_alive"].input_formats = ["%d/%m/%Y", "%d.%m.%Y", "%d-%m-%Y", "%Y-%m-%d"]
        keeper = plant.keeper
        if keeper is None or not user.acts_for(keeper):
            self.leave_out(KEEPERS_ALONE)
        if not user.is_curator:
            self.leave_out(CURATORS_ALONE)

    def leave_out(self, names: tuple[str, ...]) -> None:
        for name in names:
            del self.fields[name]

    def clean_label_text(self) -> str:
        try:
            return clean_label(self.cleaned_data["label_text"])
        except LabelTooLong as problem:
            raise forms.ValidationError(str(problem)) from problem

    def clean_last_seen_alive(self) -> date | None:
        day: date | None = self.cleaned_data["last_seen_alive"]
        if day and day > timezone.localdate():
            raise forms.ValidationError("This day has not come yet.")
        return day

    @property
    def new_date(self) -> PartialDate | None:
        """When it came, if that was typed anew."""
        typed: PartialDate = self.cleaned_data["acquired"]
        return typed if typed.words != self.initial["acquired"].words else None

    @property
    def changes(self) -> dict[str, Any]:
        """What `edit_specimen` is to write: every field shown, whoever typed it."""
        return {name: value for name, value in self.cleaned_data.items() if name != "version"}
