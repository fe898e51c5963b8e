"""The curator changes what is on record of a name."""

from __future__ import annotations

from typing import Any

from django import forms

from frondkeep.society.forms import PartialDateFormField
from specimens.models import Name, Rank, Reproduction
from specimens.naming.labels import clean_label


class EditNameForm(forms.ModelForm):
    """Epithet, raiser, introduction and the rest; what a plant is called changes with it on every page."""

    introduced = PartialDateFormField(label="Introduced")
    version = forms.IntegerField(widget=forms.HiddenInput)

    class Meta:
        model = Name
        fields = ("epithet", "author", "raiser", "reproduction", "origin", "home", "notes", "checked")
        widgets = {
            "reproduction": forms.RadioSelect,
            "origin": forms.Textarea(attrs={"rows": 3}),
            "notes": forms.Textarea(attrs={"rows": 4}),
        }
        labels = {
            "epithet": "Name, without quotation marks",
            "reproduction": "It is kept",
            "checked": "Checked",
        }

    field_order = ("epithet", "author", "raiser", "introduced", "reproduction")

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        name: Name = self.instance
        self.initial |= {"introduced": name.introduced, "version": name.version}
        self.fields["reproduction"].choices = Reproduction.choices
        for unwanted in unwanted_fields(name):
            del self.fields[unwanted]

    def clean_epithet(self) -> str:
        """Quotation marks belong to the way a cultivar name is written, not to the name."""
        epithet = clean_label(self.cleaned_data["epithet"])
        if self.instance.is_cultivar:
            epithet = epithet.strip("'‘’\"“” ")
        if not any(each.isalnum() for each in epithet):
            raise forms.ValidationError("A name needs at least one word.")
        return epithet

    @property
    def changes(self) -> dict[str, Any]:
        return {name: value for name, value in self.cleaned_data.items() if name != "version"}


def unwanted_fields(name: Name) -> tuple[str, ...]:
    if name.is_cultivar:
        return ("author", "home")
    cultivars_alone = ("raiser", "introduced", "reproduction", "origin")
    return (*cultivars_alone, "epithet") if name.rank == Rank.FORMULA else cultivars_alone
