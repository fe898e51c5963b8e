"""What README and DEVELOPERS tell people to type exists, and so does every file they point to."""

from __future__ import annotations

import importlib.metadata
import importlib.util
import re
import shutil
import subprocess
import tomllib
from pathlib import Path

import pytest
from django.core.management import get_commands, load_command_class

from tests.benchmarks.__main__ import names as benchmarks
from tests.written_commands import Command, block_after, commands_in, links, shell_blocks, spans

ROOT = Path(__file__).resolve().parent.parent
PAGES = ["README.md", "DEVELOPERS.md"]
BUILT_IN = {"cd", "export", "source", "set", ".", "env"}
# Programs of the operating system that a page may name; whether this machine has them proves nothing.
OUTSIDE = {
    "apt-get",
    "createdb",
    "createuser",
    "crontab",
    "git",
    "psql",
    "service",
    "su",
    "sudo",
    "systemctl",
}
OURS = re.compile(r"(frondkeep|specimens|lineage|templates|static|tests|demo_data|\.ci)/[\w./-]*")
EXTRAS = set(tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["optional-dependencies"])
SOURCES = "\n".join(
    path.read_text() for folder in ("frondkeep", "tests") for path in (ROOT / folder).glob("*.py")
)
OF_PYTHON = {entry.name for entry in importlib.metadata.entry_points(group="console_scripts")}


def page(name: str) -> str:
    return (ROOT / name).read_text()


def written(name: str) -> list[Command]:
    """Commands in blocks, and those in running text that run something of ours."""
    text = page(name)
    in_text = [span for span in spans(text) if re.match(r"(\S*python3? )?(-m \w|manage\.py \w)", span)]
    return [command for piece in [*shell_blocks(text), *in_text] for command in commands_in(piece)]


def faults(command: Command) -> list[str]:
    """What in this command does not exist."""
    return [
        *(f"no setting {each}" for each in command.variables if f'"{each}"' not in SOURCES),
        *faults_of_program(command.program),
        *faults_of_management(command.after("manage.py")),
        *faults_of_module(command.after("-m") if "python" in command.program else []),
        *(
            f"no extra {each}"
            for word in command.words
            for each in extras_asked_for(word)
            if each not in EXTRAS
        ),
        *(f"no file {word}" for word in command.words if OURS.fullmatch(word) and not (ROOT / word).exists()),
    ]


def faults_of_program(program: str) -> list[str]:
    name = program.rpartition("/")[2]
    if program in BUILT_IN | OUTSIDE | {""} or name.startswith("python") or name in OF_PYTHON | {"pip"}:
        return []
    if "/" in program and (ROOT / program).exists():
        return []
    return [] if program == "manage.py" or shutil.which(program) else [f"no program {program}"]


def faults_of_management(words: list[str]) -> list[str]:
    """Faults in what follows `manage.py`."""
    if not words:
        return []
    name, *rest = words
    if name not in get_commands():
        return [f"no command {name}"]
    app = get_commands()[name]
    known = (app if not isinstance(app, str) else load_command_class(app, name)).create_parser(
        "manage.py", name
    )
    asked = [word.partition("=")[0] for word in rest if word.startswith("-")]
    return [f"{name} has no {each}" for each in asked if each not in known._option_string_actions]


def faults_of_module(words: list[str]) -> list[str]:
    """Faults in what follows `python -m`."""
    if not words:
        return []
    if words[0] == "tests.benchmarks":
        return [f"no benchmark {name}" for name in words[1:2] if name.islower() and name not in benchmarks()]
    return [] if importlib.util.find_spec(words[0]) else [f"no module {words[0]}"]


def extras_asked_for(word: str) -> list[str]:
    found = re.fullmatch(r"\.\[([\w,]+)\]", word)
    return found[1].split(",") if found else []


@pytest.mark.parametrize("name", PAGES)
def test_every_command_exists(name: str) -> None:
    commands = written(name)
    assert commands
    assert {" ".join(command.words): wrong for command in commands if (wrong := faults(command))} == {}


@pytest.mark.parametrize("name", PAGES)
def test_every_block_of_commands_is_sound_shell(name: str) -> None:
    for block in shell_blocks(page(name)):
        done = subprocess.run(["bash", "-n"], input=block, capture_output=True, text=True, check=False)
        assert done.stderr == "", block


@pytest.mark.parametrize("name", PAGES)
def test_every_file_pointed_to_exists(name: str) -> None:
    text = page(name)
    named = [span for span in spans(text) if OURS.fullmatch(span)]
    assert [each for each in [*links(text), *named] if not (ROOT / each).exists()] == []


def test_the_suite_is_run_as_readme_says() -> None:
    block = block_after(page("README.md"), "Run the tests")
    assert any(command.program.endswith("pytest") for command in commands_in(block))


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        (".venv/bin/python manage.py demonstrate", "no command demonstrate"),
        ("python manage.py migrate --wish", "migrate has no --wish"),
        ("python -m tests.benchmarks moonlight", "no benchmark moonlight"),
        ("cd here && python3 -m nowhere_at_all", "no module nowhere_at_all"),
        ("pip install -e '.[test,moonlight]'", "no extra moonlight"),
        ("MOONLIGHT=1 manage.py check", "no setting MOONLIGHT"),
        ("moonlight > file", "no program moonlight"),
        (".venv/bin/pytest -q tests/moonlight | tail", "no file tests/moonlight"),
    ],
)
def test_what_does_not_exist_is_found(line: str, fault: str) -> None:
    assert [wrong for command in commands_in(line) for wrong in faults(command)] == [fault]


@pytest.mark.parametrize(
    "line",
    [
        "python3 -m venv .venv && .venv/bin/pip install -q -e '.[test]' && .venv/bin/pytest",
        "SECRET_KEY=x HTTPS=off .venv/bin/python manage.py migrate --noinput > log 2>&1",
        "DATABASE_URL=postgres://ferns@127.0.0.1/ferns .venv/bin/pytest -q tests/lineage",
        ".venv/bin/ruff check . && .venv/bin/ruff format --check .  # both",
    ],
)
def test_what_exists_is_let_through(line: str) -> None:
    assert [wrong for command in commands_in(line) for wrong in faults(command)] == []
