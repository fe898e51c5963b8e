"""The committee's forms: a show and its classes."""

from __future__ import annotations

from typing import Any

from django import forms
from django.core.validators import MaxValueValidator, MinValueValidator

from frondkeep.shows.models import Show, ShowClass
from frondkeep.society.forms import SubmissionForm
from specimens.models import Name, Rank

# The least and the most that makes sense, of every number the committee types.
NUMBERS = {
    "months_of_possession": (0, 600),
    "most_entries": (1, 999),
    "most_in_class": (1, 99),
    "number": (1, 9999),
    "how_many": (1, 99),
}


def bound_numbers(form: forms.BaseForm) -> None:
    """Answer a number beyond reason where it was typed."""
    for name in form.fields.keys() & NUMBERS.keys():
        least, most = NUMBERS[name]
        form.fields[name].validators += [
            MinValueValidator(least, f"At least {least}."),
            MaxValueValidator(most, f"At most {most}."),
        ]


class ShowForm(SubmissionForm, forms.ModelForm):
    class Meta:
        model = Show
        fields = [
            "name", "date", "venue", "entries_close_at", "months_of_possession", "most_entries", "most_in_class",
        ]  # fmt: skip
        widgets = {
            "date": forms.DateInput(attrs={"placeholder": "12/12/2026"}),
            "entries_close_at": forms.DateTimeInput(attrs={"placeholder": "10/12/2026 21:00"}),
        }
        labels = {"most_entries": "Most entries an exhibitor (empty: as many as they like)"}

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        bound_numbers(self)
        days = ["%d/%m/%Y", "%d.%m.%Y", "%Y-%m-%d", "%d %B %Y"]
        self.fields["date"].input_formats = days
        self.fields["entries_close_at"].input_formats = [f"{day} %H:%M" for day in days]
        for field, hint in (
            ("date", "Day, month, year: 12/12/2026"),
            ("entries_close_at", "With the hour: 10/12/2026 21:00"),
        ):
            self.fields[field].help_text = hint


class ClassForm(SubmissionForm, forms.ModelForm):
    class Meta:
        model = ShowClass
        fields = ["number", "section", "title", "stages", "wants", "genus", "how_many"]
        widgets = {"stages": forms.RadioSelect, "wants": forms.RadioSelect}

    def __init__(self, *args: Any, show: Show, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        bound_numbers(self)
        self.instance.show = show
        genera = Name.objects.standing().filter(rank=Rank.GENUS).exclude(epithet__startswith="(")
        self.fields["genus"].queryset = genera.in_reading_order()
        self.fields["genus"].empty_label = "any genus"

    def clean_number(self) -> int:
        number: int = self.cleaned_data["number"]
        taken = ShowClass.objects.filter(show=self.instance.show, number=number).exclude(pk=self.instance.pk)
        if taken.exists():
            raise forms.ValidationError("Another class has this number.")
        return number
