"""Every folder of code is a package: a test folder without `__init__.py` would shadow the app it mirrors."""

from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
FOLDERS = sorted(
    {
        path.parent
        for top in ("demo_data", "frondkeep", "lineage", "specimens", "tests")
        for path in (ROOT / top).rglob("*.py")
    }
)


@pytest.mark.parametrize("folder", [pytest.param(each, id=str(each.relative_to(ROOT))) for each in FOLDERS])
def test_folder_is_a_package(folder: Path) -> None:
    assert (folder / "__init__.py").is_file()


def test_folders_were_found() -> None:
    assert ROOT / "tests" / "lineage" in FOLDERS
    assert ROOT / "lineage" / "core" in FOLDERS
