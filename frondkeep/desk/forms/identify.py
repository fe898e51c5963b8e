"""Saying what a plant is: a name, how sure, and how one knows."""

from __future__ import annotations

from typing import Any

from django import forms
from django.urls import reverse_lazy

from frondkeep.desk.searching.names import names_like
from frondkeep.society.forms import PartialDateFormField, SubmissionForm
from specimens.models import Identification, Name
from specimens.naming.labels import LabelTooLong, clean_label
from specimens.services.reading import KnownNames

NEW = "new"
MOST_LIKE = 5
ONE, PIECES = "one", "pieces"


class IdentifyForm(SubmissionForm):
    """Cleans to `name` (on record), or to `new_name` (the text, when it is to be kept as it is).

    A name that is not on record is asked about once, with the names it looks like.
    """

    name_text = forms.CharField(
        label="It is",
        max_length=200,
        help_text="A botanical name or a cultivar name, as on a tag.",
        widget=forms.TextInput(
            attrs={
                "data-suggest-url": reverse_lazy("suggest-names"),
                "data-suggest-into": "[name=name_id]",
                "autocapitalize": "off",
            }
        ),
    )
    name_id = forms.IntegerField(required=False, widget=forms.HiddenInput)
    meant = forms.ChoiceField(label="Which name do you mean?", required=False, widget=forms.RadioSelect)
    qualifier = forms.ChoiceField(
        label="How sure",
        required=False,
        widget=forms.RadioSelect,
        choices=[("", "sure"), *Identification.Qualifier.choices[1:]],
    )
    ground = forms.ChoiceField(
        label="How do you know?",
        choices=Identification.Ground.choices,
        widget=forms.RadioSelect,
        initial=Identification.Ground.LOOKS,
    )
    on = PartialDateFormField(label="When you looked")
    remarks = forms.CharField(
        label="What you saw", required=False, max_length=2000, widget=forms.Textarea(attrs={"rows": 3})
    )
    covers = forms.ChoiceField(label="This is about", required=False, widget=forms.RadioSelect, initial=ONE)

    def __init__(self, *args: Any, pieces: int = 0, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        several = f"it and its {pieces} piece{'s' if pieces > 1 else ''}"
        self.fields["covers"].choices = [(ONE, "this plant"), *([(PIECES, several)] if pieces else [])]
        self.like: list[Name] = []
        if self.is_bound:
            self.find_like(str(self.data.get("name_text", "")))

    def find_like(self, text: str) -> None:
        ids = names_like(text, limit=MOST_LIKE)
        by_id = Name.objects.standing().in_bulk(ids)
        self.like = [by_id[pk] for pk in ids if pk in by_id]
        kept = (NEW, f"none of these: keep “{text.strip()[:60]}”")
        self.fields["meant"].choices = [*((str(name.pk), name.written) for name in self.like), kept]

    def clean_name_text(self) -> str:
        """The name as a tag would say it; without a letter there is none."""
        try:
            text = clean_label(self.cleaned_data["name_text"])
        except LabelTooLong as problem:
            raise forms.ValidationError(str(problem)) from problem
        if not any(each.isalnum() for each in text):
            raise forms.ValidationError("Type a name. If nobody knows it, write “not known”.")
        return text

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        text = cleaned.get("name_text", "")
        cleaned["name"], cleaned["new_name"] = self.chosen(cleaned) or surely(text), ""
        if cleaned["name"] is None and text:
            if cleaned.get("meant") == NEW or not self.like:
                cleaned["new_name"] = text
            elif "meant" not in self.errors:
                self.add_error("meant", "This name is not on record yet. Did you mean one of these?")
        return cleaned

    def chosen(self, cleaned: dict[str, Any]) -> Name | None:
        """The name taken from the suggestions, or tapped in answer to the question."""
        meant = cleaned.get("meant")
        if meant and meant != NEW:
            return next((name for name in self.like if str(name.pk) == meant), None)
        found = Name.objects.standing().filter(pk=cleaned.get("name_id")).first()
        return found if found and found.written == cleaned.get("name_text") else None

    @property
    def asks(self) -> bool:
        return "meant" in self.errors

    @property
    def and_pieces(self) -> bool:
        return self.cleaned_data.get("covers") == PIECES


def surely(text: str) -> Name | None:
    """The name on record that the text surely means."""
    return KnownNames.load().match(text).name if text else None
