"""Log plants: what holds for all plants of one form."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

from django import forms
from django.utils import timezone

from frondkeep.desk.forms.keepers import capital, keepers_at_hand
from frondkeep.society.forms import PartialDateFormField, SubmissionForm, read_growers_date
from frondkeep.society.models import Meeting, User
from specimens.naming.dates import PartialDate

RECENT_MEETINGS = 8


class LogForm(SubmissionForm):
    """Once for all plants: the meeting, the day, and who keeps them. Cleans to `keeper`, None for nobody."""

    meeting = forms.ModelChoiceField(
        Meeting.objects.none(), label="Meeting", required=False, empty_label="none of these, or no meeting"
    )
    acquired = PartialDateFormField(label="When they came")
    kept_by = forms.ChoiceField(label="Who keeps them", required=False, widget=forms.RadioSelect)

    def __init__(self, *args: Any, user: User, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user = user
        self.at_hand = {str(keeper.pk): keeper for keeper in keepers_at_hand(user)}
        meetings = recent_meetings()
        self.fields["meeting"].queryset = Meeting.objects.filter(pk__in=[each.pk for each in meetings])
        self.fields["kept_by"].choices = [
            (pk, capital(keeper.shown_to(user))) for pk, keeper in self.at_hand.items()
        ]
        if len(self.at_hand) < 2:
            del self.fields["kept_by"]
        latest = next((each for each in meetings if is_fresh(each)), None)
        self.initial = {
            "meeting": latest.pk if latest else None,
            "acquired": day_words(latest.date if latest else timezone.localdate()),
            "kept_by": next(iter(self.at_hand), None),
        } | self.initial

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        meeting = cleaned.get("meeting")
        if cleaned.get("acquired") == PartialDate():
            day = meeting.date if meeting else timezone.localdate()
            cleaned["acquired"] = read_growers_date(day_words(day))
        first = next(iter(self.at_hand.values()), None)
        cleaned["keeper"] = self.at_hand.get(str(cleaned.get("kept_by"))) or first
        if self.is_nobodys:
            self.add_error(
                None, "Your sign-in belongs to no member yet, so we cannot say whose plants they are."
            )
        return cleaned

    @property
    def is_nobodys(self) -> bool:
        """Whether whoever signed in keeps no plants and logs for nobody."""
        return not self.at_hand and not self.user.is_curator


def recent_meetings() -> list[Meeting]:
    """The last meetings that were, newest first."""
    return list(
        Meeting.objects.filter(date__lte=timezone.localdate()).order_by("-date", "name")[:RECENT_MEETINGS]
    )


def is_fresh(meeting: Meeting) -> bool:
    """Whether plants logged today most likely came from it."""
    return meeting.date >= timezone.localdate() - timedelta(days=7)


def day_words(day: date) -> str:
    return f"{day.day} {day:%B} {day.year}"
