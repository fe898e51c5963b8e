"""The press runs apart, under limits, with nothing but our templates in reach."""

import shutil
from pathlib import Path

import pytest

from frondkeep.sheets import SheetError
from frondkeep.sheets import press as press_package
from frondkeep.sheets.press import TEMPLATES, Refused, checked_root, press

PROBE = {"characters": ["a"]}


@pytest.fixture
def own_templates(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    root = tmp_path / "sheets"
    shutil.copytree(TEMPLATES, root)
    monkeypatch.setattr(press_package, "TEMPLATES", root)
    return root


def test_our_own_templates_are_plain_files() -> None:
    assert checked_root(TEMPLATES) == TEMPLATES


def test_a_link_among_the_templates_stops_the_press(own_templates: Path) -> None:
    (own_templates / "leak.typ").symlink_to("/etc/hostname")
    with pytest.raises(SheetError, match=r"leak\.typ"):
        press("glyph_probe.typ", PROBE, timestamp=0)


@pytest.mark.parametrize(
    "reach", ['read("/../secret.txt")', 'read("../secret.txt")', 'read("/etc/hostname")']
)
def test_a_template_cannot_read_outside_its_folder(own_templates: Path, reach: str) -> None:
    (own_templates.parent / "secret.txt").write_text("secret")
    (own_templates / "reach.typ").write_text(f'#set document(title: "x")\n#{reach}')
    with pytest.raises(Refused):
        press("reach.typ", {}, timestamp=0)


def test_a_sheet_that_never_ends_is_stopped(own_templates: Path) -> None:
    (own_templates / "endless.typ").write_text(
        "#let f(n) = { let i = 0; while i < n { i += 1 } }\n#f(8000000000)"
    )
    with pytest.raises((SheetError, Refused)):
        press("endless.typ", {}, timestamp=0, seconds=1.0)


def test_a_sheet_that_eats_memory_is_stopped(own_templates: Path) -> None:
    hungry = '#let s = "x" * 1000000\n#let all = range(100000).map(i => s + str(i))\n#all.len()'
    (own_templates / "hungry.typ").write_text(hungry)
    with pytest.raises(SheetError, match="too large"):
        press("hungry.typ", {}, timestamp=0)


def test_the_press_sees_no_setting_of_the_server(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONSTARTUP", "/nowhere")
    monkeypatch.setenv("TYPST_FONT_PATHS", "/nowhere")
    assert press("glyph_probe.typ", PROBE, timestamp=0) == press("glyph_probe.typ", PROBE, timestamp=0)
