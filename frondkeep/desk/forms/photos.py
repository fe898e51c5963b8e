"""Adding a photo of a plant."""

from __future__ import annotations

from typing import Any

from django import forms

from frondkeep.society.forms import SubmissionForm
from specimens.models import Photo
from specimens.services.photos import PhotoRefusedError, read_photo


class PhotoForm(SubmissionForm):
    """Cleans to `read`, the picture made anew without place data; choosing a file again is the browser's rule."""

    file = forms.FileField(
        label="Photo",
        help_text="JPEG, PNG or WebP, up to 25 MB. Where it was taken is cut out before it is kept.",
        widget=forms.ClearableFileInput(attrs={"accept": "image/*", "data-shrink": True}),
    )
    caption = forms.CharField(label="What it shows", required=False, max_length=200)
    shown_to = forms.ChoiceField(
        label="May be shown to",
        choices=[
            (Photo.ShownTo.MEMBERS.value, "members"),
            (Photo.ShownTo.PAPERS.value, "members and the society’s papers"),
            (Photo.ShownTo.NOBODY.value, "only me and my household"),
        ],
        widget=forms.RadioSelect,
        initial=Photo.ShownTo.MEMBERS.value,
    )
    mine = forms.BooleanField(label="I took it", required=False, initial=True)

    def clean(self) -> dict[str, Any]:
        cleaned = super().clean() or {}
        file = cleaned.get("file")
        if file is not None:
            try:
                cleaned["read"] = read_photo(file, size=file.size)
            except PhotoRefusedError as problem:
                self.add_error("file", str(problem))
        return cleaned
