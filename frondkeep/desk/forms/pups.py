"""Took a pup: how many, of what kind, when, and who keeps them."""

from __future__ import annotations

from typing import Any

from django import forms

from frondkeep.desk.forms.keepers import KeptByForm
from frondkeep.society.forms import PartialDateFormField, SubmissionForm
from specimens.models import Division
from specimens.naming.labels import LabelTooLong, clean_label


class TookPupForm(SubmissionForm, KeptByForm):
    """`unlikely` is the question for a plant that makes no pups by nature; asked once, never a refusal."""

    count = forms.IntegerField(label="How many", min_value=1, max_value=50, initial=1)
    kind = forms.ChoiceField(
        label="What was taken",
        choices=Division.Kind.choices,
        initial=Division.Kind.PUP,
        widget=forms.RadioSelect,
    )
    taken = PartialDateFormField(label="When")
    label_text = forms.CharField(
        label="What the new tag says",
        required=False,
        max_length=500,
        help_text="Leave it empty if it says what the parent’s tag says.",
    )
    sure = forms.BooleanField(label="Yes, it made one", required=False)

    field_order = ("submission", "sure", "count", "kind", "taken", "kept_by", "other_keeper", "label_text")

    def __init__(self, *args: Any, unlikely: str = "", **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.unlikely = unlikely

    def clean_label_text(self) -> str:
        try:
            return clean_label(self.cleaned_data["label_text"])
        except LabelTooLong as problem:
            raise forms.ValidationError(str(problem)) from problem

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean()
        if self.unlikely and not cleaned.get("sure"):
            self.add_error("sure", self.unlikely)
        return cleaned

    @property
    def asks(self) -> bool:
        """Whether the question stands open or was answered."""
        return self.is_bound and bool(self.unlikely)
