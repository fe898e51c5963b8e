"""The environment every test runs in; loaded before Django reads its settings."""

import os
import tempfile

os.environ["DEBUG"] = "off"
os.environ["HTTPS"] = "off"
os.environ["SECRET_KEY"] = "tests-" + "k" * 60
os.environ["ALLOWED_HOSTS"] = "testserver,localhost,127.0.0.1"
os.environ.setdefault("DATA_DIR", tempfile.mkdtemp(prefix="frondkeep-tests-"))
