"""No form speaks in the framework's words."""

import pytest
from django import forms

from frondkeep.shows.forms.schedule import ShowForm
from frondkeep.society.form_words import NOT_AN_ANSWER
from frondkeep.society.forms import PartialDateFormField


class Anything(forms.Form):
    words = forms.CharField()
    pick = forms.ChoiceField(choices=[("a", "A")])
    picks = forms.MultipleChoiceField(choices=[("a", "A")])
    day = forms.DateField()
    count = forms.IntegerField()
    when = PartialDateFormField(required=True)
    photo = forms.ImageField()


def test_what_is_missing_is_asked_for_kindly() -> None:
    errors = Anything({}).errors
    assert {field: said for field, (said,) in errors.items()} == {
        "words": "Please fill this in.",
        "pick": "Please choose one of these.",
        "picks": "Please choose one of these.",
        "day": "Please fill this in.",
        "count": "Please fill this in.",
        "when": "Please fill this in.",
        "photo": "Please choose a file.",
    }


@pytest.mark.parametrize("field", ["pick", "picks"])
def test_an_answer_that_was_not_offered_is_answered_plainly(field: str) -> None:
    assert Anything({field: ["z"]}).errors[field] == [NOT_AN_ANSWER]


def test_words_that_are_no_number_or_day_are_not_called_invalid() -> None:
    errors = Anything({"day": "soon", "count": "few"}).errors
    assert errors["day"][0].startswith("We could not read this date.")
    assert errors["count"][0].startswith("We could not read this number.")


def test_forms_of_records_say_the_same() -> None:
    errors = ShowForm({}).errors
    assert errors
    assert not any("field is required" in said for field in errors.values() for said in field)
