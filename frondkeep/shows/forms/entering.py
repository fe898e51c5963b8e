"""Entering a show: a member their own plants, the committee anybody's."""

from __future__ import annotations

from typing import Any

from django import forms
from django.db.models import Q, QuerySet

from frondkeep.shows.models import ShowClass
from frondkeep.shows.services.entries import Staged
from frondkeep.society.forms import SubmissionForm
from frondkeep.society.models import Keeper, User
from specimens.models import Specimen
from specimens.naming.codes import CodeNotRead, read_code
from specimens.naming.labels import LabelTooLong, clean_label
from specimens.services.reading import KnownNames

MOST_LINES = 100


class EnterForm(SubmissionForm):
    """A member's entry: which of the plants that fit, or what is shown where no plant is staged."""

    plants = forms.MultipleChoiceField(
        label="Which plant", required=False, widget=forms.CheckboxSelectMultiple
    )
    title = forms.CharField(label="What is shown", max_length=200, required=False)
    note = forms.CharField(label="A word to the committee", max_length=200, required=False)

    def __init__(
        self, *args: Any, show_class: ShowClass, fitting: list[tuple[Specimen, str]], **kwargs: Any
    ) -> None:
        super().__init__(*args, **kwargs)
        self.by_code = {plant.code: plant for plant, _ in fitting}
        if show_class.stages_plants:
            self.fields["plants"].choices = [(plant.code, words) for plant, words in fitting]
            self.fields["plants"].label = "Which plant" if show_class.how_many == 1 else "Which plants"
            del self.fields["title"]
        else:
            del self.fields["plants"]

    def staged(self) -> tuple[Staged, ...]:
        chosen = dict.fromkeys(self.cleaned_data.get("plants", ()))
        return tuple(Staged(specimen=self.by_code[code]) for code in chosen)


class CommitteeEnterForm(SubmissionForm):
    """The committee's entry for anybody: a member or household by name, or a guest."""

    exhibitor = forms.CharField(
        label="Exhibitor", max_length=120, help_text="A member’s or household’s name, or a guest’s."
    )
    is_guest = forms.BooleanField(label="A guest, no member", required=False)
    junior = forms.BooleanField(label="A junior", required=False)
    plants = forms.CharField(
        label="What is shown",
        required=False,
        widget=forms.Textarea(attrs={"rows": 3}),
        help_text="One plant a line: its code, or its name where it is not on record.",
    )
    title = forms.CharField(
        label="Or what it is called",
        max_length=200,
        required=False,
        help_text="For fronds, displays and photographs.",
    )
    note = forms.CharField(label="Remark", max_length=200, required=False)
    overrule = forms.BooleanField(label="Take it although a rule speaks against it", required=False)

    def __init__(self, *args: Any, user: User, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.user = user
        self.keeper: Keeper | None = None
        self.staged: tuple[Staged, ...] = ()

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        if not cleaned.get("is_guest") and cleaned.get("exhibitor"):
            self.keeper = self.find_keeper(cleaned["exhibitor"].strip())
        lines = [line.strip() for line in cleaned.get("plants", "").splitlines() if line.strip()]
        if len(lines) > MOST_LINES:
            self.add_error("plants", f"These are {len(lines)} plants; an entry has {MOST_LINES} at most.")
            lines = []
        self.staged = tuple(staged for line in lines if (staged := self.read_line(line)))
        self.look_for_doubles()
        return cleaned

    def look_for_doubles(self) -> None:
        codes = [staged.specimen.code for staged in self.staged if staged.specimen]
        for code in sorted({code for code in codes if codes.count(code) > 1}):
            self.add_error("plants", f"{code} stands here twice. Leave it in one line.")

    def find_keeper(self, typed: str) -> Keeper | None:
        named = Q(member__name__iexact=typed) | Q(household__name__iexact=typed)
        found = list(Keeper.objects.with_people().filter(named)[:2])
        if len(found) == 1:
            return found[0]
        self.add_error(
            "exhibitor",
            "Two keepers bear this name; ask the curator."
            if found
            else "No member or household bears this name. Correct it, or tick “a guest”.",
        )
        return None

    def read_line(self, line: str) -> Staged | None:
        try:
            code = read_code(line)
        except CodeNotRead as problem:
            if problem.did_you_mean:
                self.add_error("plants", self.slip_in(line, problem))
                return None
            return self.read_typed_name(line)
        plant = self.plants_at_hand().filter(code=str(code)).first()
        if plant is None:
            self.add_error("plants", f"No plant bears the code {code}.")
            return None
        return Staged(specimen=plant)

    def plants_at_hand(self) -> QuerySet[Specimen]:
        """What the committee may see, and all that the exhibitor keeps."""
        plants = Specimen.objects.visible_to(self.user).with_page_parts()
        if self.keeper is None:
            return plants
        return plants | Specimen.objects.kept_by(frozenset({self.keeper.pk})).with_page_parts()

    def slip_in(self, line: str, problem: CodeNotRead) -> str:
        """What is said of a code with a slip: the codes of plants that may be meant, if there are any."""
        near = self.plants_at_hand().filter(code__in=[*map(str, problem.did_you_mean), *without_letter(line)])
        meant = " or ".join(near.values_list("code", flat=True).order_by("code")[:3])
        return f"“{line}” has a slip. " + (f"Did you mean {meant}?" if meant else "Look at its tag again.")

    def read_typed_name(self, line: str) -> Staged | None:
        try:
            typed = clean_label(line)[:200]
            if not typed:
                return None
            matched = KnownNames.load().match(typed)
            # A doubtful name is printed as it was typed, doubt and all.
            return Staged(typed_name=typed, name=None if matched.qualifier else matched.name)
        except LabelTooLong as problem:
            self.add_error("plants", str(problem))
            return None


def without_letter(line: str) -> list[str]:
    """The code that these digits have, if it is the letter alone that is wrong."""
    try:
        return [str(read_code(line.strip()[:-1]))]
    except CodeNotRead:
        return []
