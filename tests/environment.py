"""The environment every test runs in; loaded before Django reads its settings.

Whatever the shell or a `.env` file says, a test sees no one's real data: only DATABASE_URL is obeyed,
and there Django makes a test database of its own.
"""

import atexit
import os
import shutil
import tempfile

# In memory where there is room: the database waits for the disk at every commit.
MEMORY = "/dev/shm"
ROOM = os.access(MEMORY, os.W_OK) and shutil.disk_usage(MEMORY).free > 500_000_000
DATA_DIR = tempfile.mkdtemp(prefix="frondkeep-tests-", dir=MEMORY if ROOM else None)
atexit.register(shutil.rmtree, DATA_DIR, ignore_errors=True)

os.environ |= {
    "ALLOWED_HOSTS": "testserver,localhost,127.0.0.1",
    "CSRF_TRUSTED_ORIGINS": "",
    "DATA_DIR": DATA_DIR,
    "DATES_DAY_FIRST": "on",
    "DEBUG": "off",
    "HTTPS": "off",
    "S3_BUCKET": "",
    "SECRET_KEY": "tests-" + "k" * 60,
    "SOUTHERN_HEMISPHERE": "off",
    "TIME_ZONE": "UTC",
}
