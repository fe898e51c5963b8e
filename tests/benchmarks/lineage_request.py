"""One edit as a web request makes it: only what the change can reach is read from the database."""

import sqlite3
from pathlib import Path

from lineage.core import ORIGINS, Node, Pedigree

LINKS = """
    SELECT id AS child, parent1 AS parent FROM plant WHERE parent1 IS NOT NULL
    UNION ALL SELECT id, parent2 FROM plant WHERE parent2 IS NOT NULL
    UNION ALL SELECT id, parent FROM candidate
"""
RELATED = """
    WITH RECURSIVE
    below (id) AS (
        SELECT ?
        UNION SELECT link.child FROM below JOIN link ON link.parent = below.id
    ),
    above (id) AS (
        SELECT id FROM below
        UNION SELECT link.parent FROM above JOIN link ON link.child = above.id
    )
    SELECT plant.id, kind, parent1, parent2, species FROM above
    JOIN plant USING (id) LEFT JOIN founder USING (id)
"""


class RequestEdits:
    """Edits of a society's file, each from nothing but the file."""

    def __init__(self, path: Path) -> None:
        with sqlite3.connect(path) as database:
            database.execute("CREATE TABLE link AS " + LINKS)
            database.execute("CREATE INDEX link_parent ON link (parent, child)")
            database.execute("CREATE INDEX link_child ON link (child, parent)")
            database.execute("CREATE INDEX candidate_id ON candidate (id)")
        database.close()
        self._database = sqlite3.connect(path)

    def revise(self, id: int) -> set[int]:
        """Read the descendants of a plant and the ancestors of all those, and make the plant a self."""
        rows = self._database.execute(RELATED, (id,)).fetchall()
        pedigree = Pedigree([self._node(*row) for row in rows])
        first = next(one for plant, _, one, _, _ in rows if plant == id)
        return pedigree.revise([Node(id, "self", parents=(first,), selfing="intra")])

    def _node(self, id: int, kind: int, one: int | None, two: int | None, species: int | None) -> Node:
        parents = [parent for parent in (one, two) if parent is not None]
        if ORIGINS[kind] == "mixed":
            parents += [
                p for (p,) in self._database.execute("SELECT parent FROM candidate WHERE id = ?", (id,))
            ]
        composition = None if species is None else {species: 1}
        return Node(id, ORIGINS[kind], parents=tuple(parents), composition=composition)
