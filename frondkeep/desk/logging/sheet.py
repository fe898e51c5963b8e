"""The form as it came in: its common part and its cards, with chosen photos put aside."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from django.core.files.uploadedfile import UploadedFile
from django.http import HttpRequest, QueryDict

from frondkeep.desk.forms.answers import AnswersForm
from frondkeep.desk.forms.logging import LogForm
from frondkeep.desk.forms.plant_cards import MOST_CARDS, TAKEN_OVER, BaseCards, Cards, PlantCard
from frondkeep.desk.logging.answering import answers_given, drop_stale_answers
from frondkeep.desk.logging.known import known_names
from frondkeep.desk.logging.plans import Plan, key_of, plan_card
from frondkeep.desk.logging.questions import Question, questions_about
from frondkeep.desk.logging.waiting_photos import keep_waiting
from frondkeep.desk.logging.writing import Log
from frondkeep.society.keys import key_asked
from frondkeep.society.models import User
from specimens.services.photos import PhotoRefusedError
from specimens.services.reading import KnownNames

PREFIX = "plants"
CARD_FIELD = re.compile(rf"{PREFIX}-(\d{{1,3}})-(\w+)")


class Sheet:
    """What was sent. Photos are kept at once, so that no step loses them."""

    def __init__(self, request: HttpRequest) -> None:
        self.user: User = request.user
        self.data: QueryDict = request.POST.copy()
        self.troubles = put_photos_aside(self.data, request.FILES, self.user)
        self.known = known_names()
        self.common = LogForm(self.data, user=self.user)
        self.cards: BaseCards = Cards(
            self.data,
            prefix=PREFIX,
            photo_troubles=self.troubles,
            form_kwargs={"user": self.user, "known": self.known, "has_keeper": bool(self.common.at_hand)},
        )
        self.plans: tuple[Plan, ...] = ()
        self.questions: dict[int, list[Question]] = {}

    def is_valid(self) -> bool:
        # Both are asked, so that all mistakes are shown at once.
        return all([self.common.is_valid(), self.cards.is_valid()])

    def show_answers(self) -> None:
        """Put what was answered on the cards back on them."""
        show_answers(self.cards, self.data, known=self.known, reader=self.user)

    def plan(self) -> AnswersForm:
        """Read every tag and ask what is to be asked; returns the form that holds the answers."""
        keeper = self.common.cleaned_data["keeper"]
        self.plans = tuple(
            plan_card(card.cleaned_data, number=number, keeper=keeper, known=self.known, reader=self.user)
            for number, card in enumerate(self.cards.forms)
            if card.has_changed()
        )
        given = drop_stale_answers(self.data.dict(), places=self.cards.total_form_count())
        self.questions = {
            plan.number: questions_about(plan, answers=given, reader=self.user) for plan in self.plans
        }
        every = list(self.asked.values())
        # Before somebody had a chance to answer nothing is wrong yet.
        if "confirmed" in self.data:
            return AnswersForm(given, questions=every)
        return AnswersForm(initial=given, questions=every)

    def log(self, answers: dict[str, str]) -> Log:
        typed = self.common.cleaned_data
        return Log(
            plans=self.plans,
            answers=answers,
            meeting=typed["meeting"],
            acquired=typed["acquired"],
            by=self.user,
            known=self.known,
            still_open=frozenset(key for key in self.asked if not answers.get(key)),
        )

    @property
    def asked(self) -> dict[str, Question]:
        return {question.key: question for each in self.questions.values() for question in each}

    def answers_so_far(self) -> dict[str, str]:
        """Those of the answers sent that are answers to what is asked."""
        given = drop_stale_answers(self.data.dict(), places=self.cards.total_form_count())
        sent = {key: given.get(key, "") for key in self.asked}
        return {key: value for key, value in sent.items() if value in dict(self.asked[key].choices)}

    def typed(self) -> Iterator[tuple[str, str]]:
        """Every field as it came, for hidden fields of the next step; not the answers, which are shown."""
        left_out = {"csrfmiddlewaretoken", "confirmed", *self.asked}
        return (
            (key, value)
            for key, values in self.data.lists()
            if key not in left_out and not key.endswith("_about")
            for value in values
        )

    def card(self, number: int) -> PlantCard:
        return self.cards.forms[number]


def put_photos_aside(data: QueryDict, files: Any, user: User) -> dict[int, str]:
    """Keep each uploaded photo and note its ticket in `data`; returns what is wrong with the others, by card."""
    troubles: dict[int, str] = {}
    for key, upload in list(files.items())[:MOST_CARDS]:
        number = key.removeprefix(f"{PREFIX}-").removesuffix("-photo")
        if key_asked(number) is not None and isinstance(upload, UploadedFile):
            try:
                data[f"{PREFIX}-{number}-photo_kept"] = keep_waiting(upload, user=user)
            except PhotoRefusedError as problem:
                troubles[int(number)] = str(problem)
    return troubles


def blank(user: User) -> tuple[LogForm, BaseCards]:
    common = LogForm(user=user)
    return common, Cards(prefix=PREFIX, form_kwargs=card_kwargs(user, common))


def shown_again(
    request: HttpRequest, *, more: int = 0, without: int | None = None
) -> tuple[LogForm, BaseCards]:
    """What was typed, shown again with nothing judged: with `more` empty cards, or one card left out."""
    user, data = request.user, request.POST.copy()
    troubles = put_photos_aside(data, request.FILES, user)
    typed = cards_typed(data)
    if without is not None and 0 <= without < len(typed):
        del typed[without]
        data = renumbered(data, without=without)
        troubles = {place - (place > without): words for place, words in troubles.items() if place != without}
    last = typed[-1] if typed else {}
    new = {name: last[name] for name in TAKEN_OVER if name in last}
    typed = (typed + [new] * max(more, 0 if typed else 1))[:MOST_CARDS]
    common = LogForm(
        initial={name: data[name] for name in LogForm.base_fields if data.get(name) is not None}, user=user
    )
    cards = Cards(
        prefix=PREFIX,
        initial=typed,
        form_kwargs=card_kwargs(user, common),
        photo_troubles=troubles,
    )
    cards.extra = 0
    show_answers(cards, data, known=known_names(), reader=user)
    return common, cards


def renumbered(data: QueryDict, *, without: int) -> QueryDict:
    """The fields sent, without those of one card; the cards after it move up."""
    moved = QueryDict(mutable=True)
    for key, values in data.lists():
        found = CARD_FIELD.fullmatch(key)
        place = int(found[1]) if found else -1
        if place != without:
            name = key_of(place - 1, found[2]) if found and place > without else key
            moved.setlist(name, values)
    return moved


def show_answers(cards: BaseCards, data: QueryDict, *, known: KnownNames, reader: User) -> None:
    sent = data.dict()
    for place, card in enumerate(cards.forms):
        card.answers = answers_given(sent, place=place, known=known, reader=reader)


def cards_typed(data: QueryDict) -> list[dict[str, str]]:
    """Each card's fields as typed, by name; a field not sent is left to its initial value."""
    count = key_asked(data.get(f"{PREFIX}-TOTAL_FORMS", ""))
    names = PlantCard.base_fields
    return [
        {name: data[f"{PREFIX}-{number}-{name}"] for name in names if f"{PREFIX}-{number}-{name}" in data}
        for number in range(1 if count is None else min(count, MOST_CARDS))
    ]


def card_kwargs(user: User, common: LogForm) -> dict[str, Any]:
    return {"user": user, "has_keeper": bool(common.at_hand)}
