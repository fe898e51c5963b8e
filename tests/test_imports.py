"""Imports run one way, and the pure parts import nothing of the project."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
# From the bottom up: each part may import those before it.
PARTS = ("frondkeep.society", "specimens", "lineage", "frondkeep.shows", "frondkeep.desk")
PURE = ("lineage.core", "specimens.naming", "specimens.portraits", "frondkeep.sheets")


def modules() -> Iterator[tuple[str, Path]]:
    for part in ("frondkeep", "specimens", "lineage"):
        for path in sorted((ROOT / part).rglob("*.py")):
            yield ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__"), path


def part_of(module: str, among: tuple[str, ...]) -> str | None:
    return next((part for part in among if module == part or module.startswith(f"{part}.")), None)


def imported(module: str, path: Path) -> Iterator[str]:
    package = module if path.name == "__init__.py" else module.rpartition(".")[0]
    for node in ast.walk(ast.parse(path.read_text())):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            above = package.split(".")[: len(package.split(".")) - node.level + 1] if node.level else []
            yield ".".join([*above, *([node.module] if node.module else [])])


def wrong_imports(module: str, path: Path) -> list[str]:
    """What a module imports against the rules."""
    found = []
    for target in imported(module, path):
        if not target.startswith(("frondkeep", "specimens", "lineage")) or part_of(target, PURE):
            if part_of(module, PURE) and target.startswith("django"):
                found.append(target)
            continue
        pure = part_of(module, PURE)
        own, other = part_of(module, PARTS), part_of(target, PARTS)
        if pure or (own and other and PARTS.index(other) > PARTS.index(own)):
            found.append(target)
    return found


@pytest.mark.parametrize(("module", "path"), [pytest.param(*each, id=each[0]) for each in modules()])
def test_module_imports_only_downward(module: str, path: Path) -> None:
    assert wrong_imports(module, path) == []


def test_an_upward_import_is_found(tmp_path: Path) -> None:
    wrong = tmp_path / "wrong.py"
    wrong.write_text("from lineage.services import refresh\nimport frondkeep.desk.urls\n")
    assert wrong_imports("specimens.services.wrong", wrong) == ["lineage.services", "frondkeep.desk.urls"]
    assert wrong_imports("specimens.naming.wrong", wrong) == ["lineage.services", "frondkeep.desk.urls"]


def test_the_top_level_is_the_architecture() -> None:
    allowed = {
        "README.md",
        "DEVELOPERS.md",
        "pyproject.toml",
        "manage.py",
        "frondkeep",
        "specimens",
        "lineage",
    }
    allowed |= {"templates", "static", "tests", "demo_data"}
    assert {path.name for path in ROOT.iterdir() if not path.name.startswith(".")} <= allowed
