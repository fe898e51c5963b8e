"""A tag answered while its card is still being filled in: the name of today, or the question which one is meant."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from django.forms import BoundField

from frondkeep.desk.forms.answers import AnswersForm
from frondkeep.desk.logging.plans import key_of
from frondkeep.desk.logging.questions import Question, about_name, notes_about_name
from frondkeep.desk.logging.tags import read_tag
from frondkeep.society.models import User
from specimens.naming.labels import LabelTooLong, clean_label
from specimens.services.reading import KnownNames

# The field of a card that is read, by the word its questions are named with.
READ_FIELDS = {"tag": "label_text", "think": "think"}


@dataclass(frozen=True, slots=True)
class TagAnswer:
    """What a card says of one of its names. `about` is the text it answers, sent along as the field `about_key`."""

    about: str
    about_key: str
    notes: list[str]
    fields: list[tuple[Question, BoundField]]


def answer_tag(
    text: str, *, place: int, what: str, known: KnownNames, reader: User, given: Mapping[str, str]
) -> TagAnswer | None:
    """The answer to a tag; None where it is plainly a name on record, or says nothing, or is too long."""
    try:
        read = read_tag(clean_label(text), known=known, reader=reader)
    except LabelTooLong:
        return None
    questions = list(about_name(place, what, read))
    form = AnswersForm(initial=dict(given), questions=questions)
    notes = notes_about_name(read)
    if not notes and not questions:
        return None
    fields = [(question, form[question.key]) for question in questions]
    return TagAnswer(text, key_of(place, f"{what}_about"), notes, fields)


def answers_given(
    data: Mapping[str, str], *, place: int, known: KnownNames, reader: User
) -> dict[str, TagAnswer]:
    """The answers on a card that comes back: those to tags about which something was answered there."""
    found = {}
    for what, field in READ_FIELDS.items():
        text = data.get(key_of(place, field), "")
        answered = any(data.get(key_of(place, f"{what}_{ending}")) for ending in ("means", "genus"))
        if text and answered and not is_of_another_text(data, place, what):
            answer = answer_tag(text, place=place, what=what, known=known, reader=reader, given=data)
            if answer is not None:
                found[what] = answer
    return found


def is_of_another_text(data: Mapping[str, str], place: int, what: str) -> bool:
    """Whether the text was changed since the question about it was answered."""
    about = data.get(key_of(place, f"{what}_about"))
    return about is not None and about != data.get(key_of(place, READ_FIELDS[what]), "")


def drop_stale_answers(data: dict[str, str], *, places: int) -> dict[str, str]:
    """The fields sent, without answers about a text that was changed since."""
    stale = {
        key_of(place, f"{what}_{ending}")
        for place in range(places)
        for what in READ_FIELDS
        if is_of_another_text(data, place, what)
        for ending in ("means", "genus")
    }
    return {key: value for key, value in data.items() if key not in stale}
