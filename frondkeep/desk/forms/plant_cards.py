"""Log plants: a card for each plant."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import Any

from django import forms
from django.urls import reverse_lazy

from frondkeep.desk.forms.keepers import capital
from frondkeep.desk.logging.keepers import NOBODY, TWO, is_the_society, keepers_named
from frondkeep.desk.logging.known import known_names
from frondkeep.desk.logging.origins import PlantNotFoundError, plant_meant, spores_meant
from frondkeep.desk.logging.waiting_photos import PhotoGoneError, read_ticket
from frondkeep.society.models import Keeper, User
from frondkeep.society.services.people import society_keeper
from specimens.models import Came, Division, Holds, SeenBy
from specimens.naming.labels import LabelTooLong, clean_label
from specimens.services.reading import KnownNames

MOST_CARDS = 30
# What a new card takes over from the one before it.
TAKEN_OVER = ("kept_text", "kept_id")


class TagField(forms.CharField):
    """What a tag says, letter for letter; what cannot be printed is replaced, not refused."""

    def to_python(self, value: Any) -> str:
        try:
            return clean_label(str(value or ""))
        except LabelTooLong as problem:
            raise forms.ValidationError(f"{problem} Put the rest into the notes.", code="long") from problem


def suggesting(
    place: str, *, into: str = "", along: str = "", placeholder: str = "", at_once: bool = False
) -> forms.TextInput:
    """A text box with suggestions; see static/js/combobox.js."""
    more = {
        "data-suggest-into": into,
        "data-suggest-with": along,
        "data-suggest-at-once": at_once,
        "placeholder": placeholder,
    }
    attrs = {"data-suggest-url": reverse_lazy(place), "autocomplete": "off", "autocapitalize": "off"}
    return forms.TextInput(attrs=attrs | {name: value for name, value in more.items() if value})


class PlantCard(forms.Form):
    """One plant. Cleans to `from_keeper` or `from_words`, `parent` or `parent_words`, `sources` or `sowing`.

    A curator's also to `keeper`, None for the keeper of the whole form.
    """

    label_text = TagField(
        label="What the tag says",
        widget=suggesting("suggest-names"),
        help_text="Letter for letter. If it has none, write “no tag”.",
        error_messages={"required": "Type what the tag says. If it has none, write “no tag”."},
    )
    think = TagField(
        label="I think it is",
        required=False,
        widget=suggesting("suggest-names", placeholder="same as the tag"),
    )
    came = forms.ChoiceField(
        label="How it came",
        choices=[(value, capital(label)) for value, label in Came.choices],
        widget=forms.RadioSelect,
        error_messages={"required": "Tap how it came. “Don’t know” is a good answer."},
    )
    from_text = forms.CharField(
        label="From whom",
        required=False,
        max_length=200,
        help_text="A member, or anybody: a nursery, a friend.",
        widget=suggesting("suggest-keepers", into="[name$=from_keeper_id]"),
    )
    from_keeper_id = forms.IntegerField(required=False, widget=forms.HiddenInput)
    parent_text = forms.CharField(
        label="Piece of which plant",
        required=False,
        max_length=200,
        help_text="Its code or old number; or words, if it has none.",
        widget=suggesting("suggest-plants", along="[name$=from_keeper_id], [name$=label_text]", at_once=True),
    )
    kind = forms.ChoiceField(
        label="What kind of piece",
        required=False,
        choices=Division.Kind.choices,
        initial=Division.Kind.PUP.value,
    )
    spores_of = forms.CharField(
        label="Whose spores",
        required=False,
        max_length=400,
        help_text="A plant’s code or a name; several with commas between them. Or the code of a sowing.",
    )
    photo = forms.FileField(
        label="Photo",
        required=False,
        widget=forms.FileInput(attrs={"accept": "image/*", "data-shrink": True}),
    )
    photo_kept = forms.CharField(required=False, widget=forms.HiddenInput)
    own_number = forms.CharField(label="Your own number for it", required=False, max_length=40)
    seen_by = forms.ChoiceField(
        label="Who may see it",
        required=False,
        choices=[(value, capital(label)) for value, label in SeenBy.choices],
        widget=forms.RadioSelect,
        initial=SeenBy.MEMBERS.value,
    )
    holds = forms.ChoiceField(
        label="What the pot holds", required=False, choices=Holds.choices, initial=Holds.ONE.value
    )
    notes = forms.CharField(
        label="Notes", required=False, max_length=5000, widget=forms.Textarea(attrs={"rows": 3})
    )
    kept_text = forms.CharField(
        label="Kept by",
        required=False,
        max_length=120,
        help_text="A member, a household or the society.",
        widget=suggesting("suggest-keepers", into="[name$=kept_id]"),
    )
    kept_id = forms.IntegerField(required=False, widget=forms.HiddenInput)

    def __init__(
        self,
        *args: Any,
        user: User,
        known: KnownNames | None = None,
        has_keeper: bool = True,
        photo_trouble: str = "",
        **kwargs: Any,
    ) -> None:
        super().__init__(*args, **kwargs)
        self.user, self.known, self.has_keeper = user, known, has_keeper
        self.photo_trouble = photo_trouble
        # What the card says of its tag, by the word the question is named with; filled in by whoever shows it.
        self.answers: dict[str, Any] = {}
        if not user.is_curator:
            del self.fields["kept_text"], self.fields["kept_id"]

    def has_changed(self) -> bool:
        """Whether anything was filled in: a card left as it was is not logged, one that did not come is no card."""
        own = (name for name in self.fields if name not in TAKEN_OVER)
        return bool(self.photo_trouble) or any(self.is_touched(name) for name in own)

    def is_touched(self, name: str) -> bool:
        typed = self.data.get(self.add_prefix(name), "")
        return typed.strip() not in ("", self.fields[name].initial)

    @cached_property
    def has_photo(self) -> bool:
        return bool(self["photo_kept"].value())

    def more_is_open(self) -> bool:
        """Whether the folded part holds something to look at."""
        folded = ("own_number", "seen_by", "holds", "notes")
        return any(self[name].errors for name in folded) or any(
            self[name].value() not in (None, "", self.fields[name].initial) for name in folded
        )

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        cleaned["from_keeper"], cleaned["from_words"] = self.giver(cleaned)
        cleaned |= self.parent(cleaned) | self.spores(cleaned)
        if self.user.is_curator:
            cleaned["keeper"] = self.kept_by(cleaned)
        self.look_at_photo(cleaned)
        for name in ("kind", "seen_by", "holds"):
            cleaned[name] = cleaned.get(name) or self.fields[name].initial
        return cleaned

    def giver(self, cleaned: dict[str, Any]) -> tuple[Keeper | None, str]:
        typed = (cleaned.get("from_text") or "").strip()
        found = keepers_named(self.user, typed, chosen=cleaned.get("from_keeper_id"))
        if len(found) > 1:
            self.add_error("from_text", TWO)
        return (found[0], "") if len(found) == 1 else (None, typed)

    def parent(self, cleaned: dict[str, Any]) -> dict[str, Any]:
        words = cleaned.get("parent_text") or ""
        meant: dict[str, Any] = {"parent": None, "parent_words": words}
        if cleaned.get("came") != Came.PIECE or not words:
            return meant
        try:
            plant = plant_meant(words, reader=self.user, keeper=cleaned["from_keeper"])
        except PlantNotFoundError as problem:
            self.add_error("parent_text", str(problem))
        else:
            meant = {"parent": plant, "parent_words": "" if plant else words}
        return meant

    def spores(self, cleaned: dict[str, Any]) -> dict[str, Any]:
        words = cleaned.get("spores_of") or ""
        meant: dict[str, Any] = {"sources": (), "sowing": None}
        if cleaned.get("came") == Came.SOWING and words:
            try:
                known = self.known or known_names()
                sources, sowing = spores_meant(words, reader=self.user, known=known)
                meant = {"sources": sources, "sowing": sowing}
            except PlantNotFoundError as problem:
                self.add_error("spores_of", str(problem))
        return meant

    def kept_by(self, cleaned: dict[str, Any]) -> Keeper | None:
        """Somebody whom the curator logs for; None for the keeper of the whole form."""
        typed = (cleaned.get("kept_text") or "").strip()
        if is_the_society(typed):
            return society_keeper()
        found = keepers_named(self.user, typed, chosen=cleaned.get("kept_id"))
        if len(found) == 1:
            return found[0]
        if typed or not self.has_keeper:
            self.add_error("kept_text", TWO if found else NOBODY if typed else "Whose plant is it?")
        return None

    def look_at_photo(self, cleaned: dict[str, Any]) -> None:
        if self.photo_trouble:
            self.add_error("photo", self.photo_trouble)
        elif cleaned.get("photo_kept"):
            try:
                read_ticket(cleaned["photo_kept"], user=self.user)
            except PhotoGoneError:
                self.add_error("photo", "The photo you chose is not kept any longer. Choose it once more.")


class BaseCards(forms.BaseFormSet):
    """The cards of one form. A card left empty is not logged; at least one is to be filled in."""

    def __init__(self, *args: Any, photo_troubles: dict[int, str] | None = None, **kwargs: Any) -> None:
        self.photo_troubles = photo_troubles or {}
        super().__init__(*args, **kwargs)

    def get_form_kwargs(self, index: int | None) -> dict[str, Any]:
        trouble = self.photo_troubles.get(index, "") if index is not None else ""
        return super().get_form_kwargs(index) | {"photo_trouble": trouble}

    def _construct_form(self, i: int, **kwargs: Any) -> Any:
        # Which cards are filled in is known once all of them are made: see `forms`.
        return super()._construct_form(
            i, **kwargs | {"empty_permitted": True, "use_required_attribute": False}
        )

    @cached_property
    def forms(self) -> list[PlantCard]:
        cards = [self._construct_form(i, **self.get_form_kwargs(i)) for i in range(self.total_form_count())]
        if self.is_bound and cards and not any(card.has_changed() for card in cards):
            cards[0].empty_permitted = False
        return cards

    @property
    def filled(self) -> Iterable[PlantCard]:
        return [card for card in self.forms if card.has_changed()]


Cards = forms.formset_factory(
    PlantCard, formset=BaseCards, extra=1, max_num=MOST_CARDS, absolute_max=MOST_CARDS + 10, validate_max=True
)
