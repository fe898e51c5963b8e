"""Deciding on a pair of names, and taking a decision back."""

from __future__ import annotations

from django import forms

from frondkeep.society.forms import SubmissionForm
from lineage.core.decisions import Answer
from lineage.models import Ruling

ANSWERS = [(each.value, each.label) for each in Ruling.Answers if each != Answer.UNDONE]


class ReasonForm(SubmissionForm):
    reason = forms.CharField(
        label="Why?",
        max_length=2000,
        widget=forms.Textarea(attrs={"rows": 4}),
        help_text="What you saw, read or were told. Whoever looks at this later has only these words.",
        error_messages={"required": "Write why, in a few words."},
    )


class DecisionForm(ReasonForm):
    """The answer comes with the address of the page; `last_seen` is the newest decision it was made on."""

    last_seen = forms.IntegerField(widget=forms.HiddenInput, min_value=0)


class AnswerForm(forms.Form):
    """What the address of the page for deciding says: which answer, and which name is to stand."""

    answer = forms.ChoiceField(choices=ANSWERS)
    stands = forms.IntegerField(required=False)
