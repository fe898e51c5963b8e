"""Looks at printed paper through poppler, and says so loudly where poppler is missing."""

import os
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

Reader = Callable[..., str]


@pytest.fixture
def poppler(tmp_path: Path) -> Reader:
    """Run one of poppler's programs on a PDF: `poppler("pdftotext", pdf, "-layout")` gives its words.

    Without poppler the test is skipped, but fails where CI is set: there paper must be looked at.
    """
    if shutil.which("pdftotext") is None:
        reason = "poppler is missing (Debian: apt install poppler-utils): nobody looked at the printed paper"
        if os.environ.get("CI"):
            pytest.fail(reason)
        pytest.skip(reason)
    path = tmp_path / "sheet.pdf"

    def run(program: str, pdf: bytes, *options: str) -> str:
        path.write_bytes(pdf)
        after = ["-"] if program == "pdftotext" else []
        command = [program, *options, str(path), *after]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout

    return run
