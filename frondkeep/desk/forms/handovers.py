"""Gave away: what, to whom, when; and the receiver's answer."""

from __future__ import annotations

from typing import Any

from django import forms
from django.utils import timezone

from frondkeep.desk.forms.logging import day_words, is_fresh, recent_meetings
from frondkeep.desk.forms.plant_cards import TagField, suggesting
from frondkeep.desk.logging.keepers import TWO, keepers_named
from frondkeep.desk.people import capital
from frondkeep.society.forms import PartialDateFormField, SubmissionForm, read_growers_date
from frondkeep.society.models import Keeper, Meeting, User
from specimens.models import Division, HandOver, Specimen
from specimens.services.handovers import MOST_PIECES, Gift

MEMBER, TABLE, OUTSIDE = "member", "table", "outside"
WAYS = (
    (MEMBER, "To a member"),
    (TABLE, "On the table of a meeting"),
    (OUTSIDE, "To somebody outside the society"),
)


class GaveForm(SubmissionForm):
    """Cleans to `gift`, and to `receiver` or the words typed."""

    what = forms.ChoiceField(
        label="What did you give away",
        choices=[(value, capital(label)) for value, label in HandOver.What.choices],
        initial=HandOver.What.PIECE.value,
        widget=forms.RadioSelect,
    )
    kind = forms.ChoiceField(
        label="What kind of piece",
        required=False,
        choices=Division.Kind.choices,
        initial=Division.Kind.PUP.value,
    )
    count = forms.IntegerField(
        label="How many pieces", required=False, min_value=1, max_value=MOST_PIECES, initial=1
    )
    way = forms.ChoiceField(label="Where did it go", choices=WAYS, initial=MEMBER, widget=forms.RadioSelect)
    receiver_text = forms.CharField(
        label="Name",
        required=False,
        max_length=200,
        help_text="Not needed for a table. A member is asked whether they have it.",
        widget=suggesting("suggest-keepers", into="[name=receiver_id]"),
    )
    receiver_id = forms.IntegerField(required=False, widget=forms.HiddenInput)
    meeting = forms.ModelChoiceField(
        Meeting.objects.none(), label="Meeting", required=False, empty_label="none of these, or no meeting"
    )
    on = PartialDateFormField(label="When")
    label_text = TagField(
        label="What its tag says",
        required=False,
        help_text="Leave it empty if it says what this plant’s says.",
    )

    def __init__(self, *args: Any, user: User, plant: Specimen, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user, self.plant = user, plant
        meetings = recent_meetings()
        self.fields["meeting"].queryset = Meeting.objects.filter(pk__in=[each.pk for each in meetings])
        latest = next((each for each in meetings if is_fresh(each)), None)
        self.initial = {
            "meeting": latest.pk if latest else None,
            "on": day_words(latest.date if latest else timezone.localdate()),
        } | self.initial

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        meeting, way = cleaned.get("meeting"), cleaned.get("way")
        if way == TABLE and meeting is None:
            self.add_error("meeting", "Which meeting’s table? Choose the meeting.")
        if meeting and not self.data.get(self.add_prefix("on"), "").strip():
            cleaned["on"] = read_growers_date(day_words(meeting.date))
        if way in (MEMBER, OUTSIDE) and not cleaned.get("receiver_text"):
            self.add_error("receiver_text", "To whom did it go? Type the name.")
        cleaned["receiver"] = self.receiver(cleaned) if way == MEMBER else None
        if not self.errors:
            cleaned["gift"] = self.gift(cleaned)
        return cleaned

    def receiver(self, cleaned: dict[str, Any]) -> Keeper | None:
        """A keeper whom the giver may know by this name; None where there are only words."""
        typed = cleaned.get("receiver_text") or ""
        found = keepers_named(self.user, typed, chosen=cleaned.get("receiver_id"))
        if len(found) > 1:
            self.add_error("receiver_text", TWO)
        return found[0] if len(found) == 1 else None

    def gift(self, cleaned: dict[str, Any]) -> Gift:
        whole = cleaned["what"] == HandOver.What.PLANT
        return Gift(
            plant=self.plant,
            what=cleaned["what"],
            kind=cleaned["kind"] or Division.Kind.PUP,
            count=1 if whole else cleaned["count"] or 1,
            label_text=cleaned["label_text"],
            on=cleaned["on"],
            meeting=cleaned["meeting"],
        )


class GotForm(SubmissionForm):
    """A whole plant is with one of `keepers` now. Cleans to `keeper`."""

    keeper = forms.ChoiceField(label="Who keeps it now", widget=forms.RadioSelect)
    meeting = forms.ModelChoiceField(
        Meeting.objects.none(), label="Meeting", required=False, empty_label="none of these, or no meeting"
    )
    on = PartialDateFormField(label="When it came")

    def __init__(self, *args: Any, user: User, keepers: list[Keeper], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.keepers = {str(keeper.pk): keeper for keeper in keepers}
        meetings = recent_meetings()
        self.fields["meeting"].queryset = Meeting.objects.filter(pk__in=[each.pk for each in meetings])
        self.fields["keeper"].choices = [
            (pk, capital(keeper.shown_to(user))) for pk, keeper in self.keepers.items()
        ]
        self.initial = {"keeper": next(iter(self.keepers), None)} | self.initial

    def clean_keeper(self) -> Keeper:
        return self.keepers[self.cleaned_data["keeper"]]


class TakenForm(forms.Form):
    """The receiver has it: kept by one of `keepers`, and on record as one of the plants `logged`, or new.

    Cleans to `keeper` (None: whom it was offered to) and `logged` (None: a new record).
    """

    keeper = forms.ChoiceField(label="Who keeps it", required=False, widget=forms.RadioSelect)
    logged = forms.ChoiceField(label="Is it on record already", required=False, widget=forms.RadioSelect)

    def __init__(
        self, *args: Any, user: User, keepers: list[Keeper], logged: list[Specimen], **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.keepers = {str(keeper.pk): keeper for keeper in keepers}
        self.plants = {plant.code: plant for plant in logged}
        self.fields["keeper"].choices = [
            (pk, capital(keeper.shown_to(user))) for pk, keeper in self.keepers.items()
        ]
        self.fields["logged"].choices = [
            ("", "No, it is new: give it a code"),
            *((code, f"It is {code}, tag “{plant.label_text}”") for code, plant in self.plants.items()),
        ]
        if len(self.keepers) < 2:
            del self.fields["keeper"]
        if not self.plants:
            del self.fields["logged"]

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        cleaned["keeper"] = self.keepers.get(cleaned.get("keeper") or "")
        cleaned["logged"] = self.plants.get(cleaned.get("logged") or "")
        return cleaned
