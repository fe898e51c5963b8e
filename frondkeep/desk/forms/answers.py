"""The answers to what was asked about the plants of one form."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms

from frondkeep.desk.logging.questions import Question

CHOOSE = "Please choose one."


class AnswersForm(forms.Form):
    """One field a question, named by its key. Cleans to the answers; an idle question needs none."""

    def __init__(self, *args: Any, questions: Iterable[Question], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.questions = {question.key: question for question in questions}
        for key, question in self.questions.items():
            widget = forms.Select() if question.as_list else forms.RadioSelect()
            self.fields[key] = forms.ChoiceField(
                label=question.words, choices=question.choices, required=False, widget=widget
            )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        for key, question in self.questions.items():
            if key not in self.errors and not cleaned.get(key) and not question.is_idle(cleaned):
                self.add_error(key, CHOOSE)
        return cleaned
