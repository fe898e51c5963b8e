"""Choosing who keeps a plant: somebody at hand by a tap, anybody else the reader may know by name."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from django import forms
from django.db.models import Q
from django.urls import reverse_lazy

from frondkeep.desk.finding import known_keepers
from frondkeep.desk.people import capital
from frondkeep.society.models import Keeper, User

OTHER = "other"


def keepers_at_hand(user: User, *more: Keeper | None) -> list[Keeper]:
    """The keepers a user acts for, and these others, each once."""
    own = Keeper.objects.with_people().filter(pk__in=user.keeper_ids).order_by("pk")
    return list({keeper.pk: keeper for keeper in (*own, *more) if keeper is not None}.values())


class KeptByForm(forms.Form):
    """Who keeps it: one of `at_hand`, or somebody else by name. Cleans to `keeper`."""

    kept_by = forms.ChoiceField(label="Who keeps it now", widget=forms.RadioSelect)
    other_keeper = forms.CharField(
        label="Somebody else’s name",
        required=False,
        max_length=120,
        help_text="Only if you chose somebody else. Members who appear by name are suggested.",
        widget=forms.TextInput(
            attrs={
                "data-suggest-url": reverse_lazy("suggest-keepers"),
                "data-suggest-into": "[name=other_keeper_id]",
            }
        ),
    )
    other_keeper_id = forms.IntegerField(required=False, widget=forms.HiddenInput)

    def __init__(self, *args: Any, user: User, at_hand: Iterable[Keeper], **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user = user
        self.at_hand = {str(keeper.pk): keeper for keeper in at_hand}
        shown = [(pk, capital(keeper.shown_to(user))) for pk, keeper in self.at_hand.items()]
        self.fields["kept_by"].choices = [*shown, (OTHER, "Somebody else")]
        self.fields["kept_by"].initial = next(iter(self.at_hand), OTHER)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        chosen = cleaned.get("kept_by")
        cleaned["keeper"] = self.at_hand.get(chosen) or (self.somebody_else() if chosen == OTHER else None)
        return cleaned

    def somebody_else(self) -> Keeper | None:
        """The one keeper the reader may know by the name typed; an error at the field where there is none."""
        typed = (self.cleaned_data.get("other_keeper") or "").strip()
        found = list(self.keepers_named(typed)[:2]) if typed else []
        if len(found) == 1:
            return found[0]
        self.add_error("other_keeper", self.why_not(typed, len(found)))
        return None

    def keepers_named(self, typed: str) -> Any:
        named = Q(member__name__iexact=typed) | Q(household__name__iexact=typed)
        if typed.casefold() in ("the society", "society"):
            named |= Q(kind=Keeper.Kind.SOCIETY)
        keepers = known_keepers(self.user).filter(named).order_by("pk")
        chosen = self.cleaned_data.get("other_keeper_id")
        return keepers.filter(pk=chosen) if chosen else keepers

    @staticmethod
    def why_not(typed: str, found: int) -> str:
        if not typed:
            return "Whose name is it? Type it, or choose somebody above."
        if found:
            return "Two keepers bear this name. Pick the one you mean from the suggestions."
        return (
            "We know nobody by this name who appears by name. Log it as yours, and hand it over "
            "when they tell you; or ask the curator."
        )
