"""What the demo society runs with: a database of its own, and a random key kept beside it."""

import os
import secrets
from pathlib import Path

DEMO_DIR = Path(__file__).resolve().parent.parent / ".data" / "demo"


def prepare(directory: Path = DEMO_DIR) -> None:
    """Set what settings need, unless the environment has it already. Debug stays off."""
    directory.mkdir(mode=0o700, parents=True, exist_ok=True)
    os.environ.setdefault("DATA_DIR", str(directory))
    os.environ.setdefault("SECRET_KEY", kept_key(directory / "secret_key"))
    os.environ.setdefault("ALLOWED_HOSTS", "localhost,127.0.0.1,[::1]")
    os.environ.setdefault("HTTPS", "off")


def kept_key(path: Path) -> str:
    """The key in the file, readable by its owner alone; made at the first call."""
    if not path.exists():
        descriptor = os.open(path, os.O_CREAT | os.O_WRONLY | os.O_EXCL, 0o600)
        with os.fdopen(descriptor, "w") as file:
            file.write(secrets.token_urlsafe(64))
    return path.read_text()
