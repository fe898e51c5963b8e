"""What every form says where something is missing or cannot be read, in one place."""

from __future__ import annotations

from django import forms

CHOOSE = "Please choose one of these."
NOT_AN_ANSWER = "This is none of the answers offered. Choose one of them."
WORDS: dict[type[forms.Field], dict[str, str]] = {
    forms.Field: {"required": "Please fill this in."},
    forms.ChoiceField: {"required": CHOOSE, "invalid_choice": NOT_AN_ANSWER},
    forms.MultipleChoiceField: {"required": CHOOSE, "invalid_choice": NOT_AN_ANSWER},
    forms.ModelChoiceField: {"required": CHOOSE, "invalid_choice": NOT_AN_ANSWER},
    forms.ModelMultipleChoiceField: {"required": CHOOSE, "invalid_choice": NOT_AN_ANSWER},
    forms.IntegerField: {"invalid": "We could not read this number. Write it in digits, as in 12."},
    forms.DateField: {"invalid": "We could not read this date. Write it as in 2026-12-31."},
    forms.DateTimeField: {
        "invalid": "We could not read this day and time. Write them as in 2026-12-31 21:00."
    },
    forms.FileField: {
        "required": "Please choose a file.",
        "missing": "No file came with it. Choose it once more.",
        "empty": "The file that came is empty. Choose it once more.",
    },
}


def use_our_words() -> None:
    """Replace the framework's words; what a form of ours says itself still comes first."""
    for field, words in WORDS.items():
        field.default_error_messages = {**field.__dict__.get("default_error_messages", {}), **words}
