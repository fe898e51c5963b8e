"""The Django project: settings, addresses, and the society itself.

The system's SQLite may be a release that can lose data in write-ahead mode; where the current library
is installed as a wheel it takes the place of the standard one before Django first imports it.
"""

import sys

try:
    import pysqlite3
    import pysqlite3.dbapi2
except ImportError:  # no wheel for this machine: settings then choose the slower, safe journal
    pass
else:
    sys.modules["sqlite3"] = pysqlite3
    sys.modules["sqlite3.dbapi2"] = pysqlite3.dbapi2
