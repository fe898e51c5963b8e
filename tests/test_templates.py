"""Every template compiles, also one that no test happens to show."""

from pathlib import Path

import pytest
from django.conf import settings
from django.template.loader import get_template

TEMPLATES = Path(settings.BASE_DIR) / "templates"
PAGES = sorted(
    str(path.relative_to(TEMPLATES)) for kind in ("html", "txt") for path in TEMPLATES.rglob(f"*.{kind}")
)


@pytest.mark.parametrize("name", PAGES)
def test_template_compiles(name: str) -> None:
    assert get_template(name).template.nodelist


def test_templates_were_found() -> None:
    assert "base.html" in PAGES
