"""Photos: from outside the static files, under random names, only to those who may look at them."""

from __future__ import annotations

import logging

from django.http import FileResponse, Http404, HttpRequest
from django.views.decorators.cache import cache_control
from django.views.decorators.http import require_safe

from frondkeep.desk.finding import visible_photos

logger = logging.getLogger(__name__)


@require_safe
@cache_control(private=True, max_age=3600)
def photo(request: HttpRequest, key: str, *, small: bool = False) -> FileResponse:
    """The picture, or its thumbnail where it is `small`. No script could run in it, whatever it held."""
    found = visible_photos(request.user).filter(key=key).first()
    if found is None:
        raise Http404
    try:
        file = (found.thumbnail if small else found.file).open("rb")
    except FileNotFoundError as problem:
        logger.error("The file of photo %s is missing.", key)
        raise Http404 from problem
    response = FileResponse(file, content_type="image/jpeg")
    response["X-Content-Type-Options"] = "nosniff"
    response["Content-Security-Policy"] = "default-src 'none'; sandbox"
    return response
