"""What somebody typed into a search box, fit to be asked of a database."""

from django.http import HttpRequest

LONGEST_ASKED = 200


def text_asked(request: HttpRequest) -> str:
    """The words in `q`, cut to a length nobody types; a NUL, which PostgreSQL refuses, is a space."""
    return request.GET.get("q", "").replace("\0", " ").strip()[:LONGEST_ASKED]
