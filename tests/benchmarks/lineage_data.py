"""An invented society of any size, as columns and as a SQLite file, and pedigrees of extreme shapes."""

import sqlite3
from itertools import chain

import numpy as np

from lineage.core import ORIGINS, Pedigree

FOUNDER, DIVISION, SELF, CROSS, MIXED = (
    ORIGINS.index(name) for name in ("founder", "division", "self", "cross", "mixed")
)
GENERATIONS = 12
CLONE_DEPTH = 8


def as_columns(origin, parents, species, rng, start=None):
    """Columns of plants whose parents are places (-1: not known), under ids in random order."""
    count = len(origin)
    ids = rng.permutation(count).astype(np.int64) * 3 + 11
    places = np.concatenate(parents) if start is None else parents
    starts = np.concatenate([[0], np.cumsum([len(p) for p in parents])]) if start is None else start
    return {
        "id": ids,
        "origin": np.asarray(origin, dtype=np.uint8),
        "parent_start": np.asarray(starts, dtype=np.int64),
        "parents": np.where(places >= 0, ids[places], -1).astype(np.int64),
        "species": np.asarray(species, dtype=np.int32),
        "selfing": np.zeros(count, dtype=np.uint8),
    }


def shuffled(columns, rng):
    """The same plants, their rows in random order."""
    order = rng.permutation(len(columns["id"]))
    counts = np.diff(columns["parent_start"])[order]
    start = np.concatenate([[0], np.cumsum(counts)])
    places = np.arange(start[-1]) + np.repeat(columns["parent_start"][:-1][order] - start[:-1], counts)
    rows = {name: columns[name][order] for name in ("id", "origin", "species", "selfing")}
    return {**rows, "parent_start": start, "parents": columns["parents"][places]}


def society(count, seed=1):
    """A society of about ``count`` plants.

    A tenth are founders of 60 species; seven tenths divisions, up to 8 after one another; a fifth
    sporelings, ten of a sowing, over 12 generations: 60 % of the sowings selfs, 30 % crosses, 10 % unsettled
    with two to four candidates. One parent is of the generation before, the others of any earlier one.
    """
    rng = np.random.default_rng(seed)
    founders, per_sowing = count // 10, 10
    sowings = count // 50 // GENERATIONS
    origin, counts, parents = [np.full(founders, FOUNDER)], [np.zeros(founders, dtype=int)], []
    species = [rng.integers(0, 60, founders)]
    earlier, base = founders, np.arange(founders)
    share = 0.7 * count / (founders + sowings * per_sowing * GENERATIONS)
    first = 0
    for generation in range(GENERATIONS + 1):
        if generation:
            rows = sowings * per_sowing
            kinds = rng.choice([SELF, CROSS, MIXED], sowings, p=[0.6, 0.3, 0.1])
            width = np.where(kinds == SELF, 1, np.where(kinds == CROSS, 2, rng.integers(2, 5, sowings)))
            last = rng.integers(first, earlier, sowings)
            others = rng.integers(0, earlier, (sowings, 3))
            table = np.column_stack([last, others])
            chosen = np.repeat(table, per_sowing, axis=0)
            wide = np.repeat(width, per_sowing)
            origin.append(np.repeat(kinds, per_sowing))
            counts.append(wide)
            parents.append(chosen[np.arange(4) < wide[:, None]])
            species.append(np.full(rows, -1))
            first, base, earlier = earlier, np.arange(earlier, earlier + rows), earlier + rows
        above = base
        for _ in range(CLONE_DEPTH):
            pups = int(len(base) * share / CLONE_DEPTH)
            origin.append(np.full(pups, DIVISION))
            counts.append(np.ones(pups, dtype=int))
            parents.append(rng.choice(above, pups))
            species.append(np.full(pups, -1))
            above, earlier = np.arange(earlier, earlier + pups), earlier + pups
    start = np.concatenate([[0], np.cumsum(np.concatenate(counts))])
    plain = as_columns(
        np.concatenate(origin), np.concatenate(parents), np.concatenate(species), rng, start=start
    )
    return shuffled(plain, rng)


def dense_crosses(sowings=20_000, parents=400, generations=12, seed=2):
    """Crosses among a few parents a generation, which are offspring of the crosses before."""
    rng = np.random.default_rng(seed)
    each = sowings // generations
    origin, links = [np.full(parents, FOUNDER)], []
    choice = np.arange(parents)
    count = parents
    for _ in range(generations):
        first = rng.integers(0, parents, each)
        second = (first + rng.integers(1, parents, each)) % parents
        links.append(choice[np.column_stack([first, second])].ravel())
        origin.append(np.full(each, CROSS))
        choice = rng.choice(np.arange(count, count + each), parents, replace=False)
        count += each
    origin = np.concatenate(origin)
    start = np.concatenate([[0], np.cumsum(np.where(origin == CROSS, 2, 0))])
    species = np.where(origin == FOUNDER, np.arange(count) % 60, -1)
    return shuffled(as_columns(origin, np.concatenate(links), species, rng, start=start), rng)


def chain_of(origin, length, seed=3):
    """One founder and ``length`` plants of one origin, each from the one before; every fifth a cross back."""
    rng = np.random.default_rng(seed)
    kinds = np.full(length + 1, origin)
    kinds[0] = FOUNDER
    links = np.arange(length)
    start = np.arange(length + 2) - 1
    start[0] = 0
    if origin == SELF:
        back = np.arange(5, length + 1, 5)
        kinds[back] = CROSS
        widths = np.where(kinds == FOUNDER, 0, np.where(kinds == CROSS, 2, 1))
        start = np.concatenate([[0], np.cumsum(widths)])
        links = np.concatenate([[t - 1] if kinds[t] == SELF else [t - 1, 0] for t in range(1, length + 1)])
    species = np.where(kinds == FOUNDER, 0, -1)
    return shuffled(as_columns(kinds, links, species, rng, start=start), rng)


def write(path, columns):
    """Write plants into a SQLite file, third and later candidates into a table of their own."""
    start, parents = columns["parent_start"], columns["parents"]
    counts = np.diff(start)
    padded = np.append(parents, [-1, -1])
    one = np.where(counts > 0, padded[start[:-1]], -1)
    two = np.where(counts > 1, padded[np.minimum(start[:-1] + 1, len(parents))], -1)
    rows = zip(columns["id"].tolist(), columns["origin"].tolist(), one.tolist(), two.tolist(), strict=True)
    more = [
        (int(columns["id"][row]), int(parents[place]))
        for row in np.flatnonzero(counts > 2)
        for place in range(start[row] + 2, start[row + 1])
    ]
    with sqlite3.connect(path) as database:
        database.execute("CREATE TABLE plant (id INTEGER PRIMARY KEY, kind INT, parent1 INT, parent2 INT)")
        database.execute("CREATE TABLE founder (id INTEGER PRIMARY KEY, species INT)")
        database.execute("CREATE TABLE candidate (id INT, parent INT)")
        database.executemany("INSERT INTO plant VALUES (?, ?, nullif(?, -1), nullif(?, -1))", rows)
        database.executemany("INSERT INTO candidate VALUES (?, ?)", more)
        found = columns["species"] >= 0
        database.executemany(
            "INSERT INTO founder VALUES (?, ?)",
            zip(columns["id"][found].tolist(), columns["species"][found].tolist(), strict=True),
        )
    database.close()


def read(path):
    """Read a pedigree's columns out of such a file, a few rows at a time."""
    database = sqlite3.connect(path)

    def table(query, width):
        rows = chain.from_iterable(database.execute(query))
        return np.fromiter(rows, dtype=np.int64).reshape(-1, width).T

    id, kind, one, two = table(
        "SELECT id, kind, ifnull(parent1, -1), ifnull(parent2, -1) FROM plant ORDER BY id", 4
    )
    founders, codes = table("SELECT id, species FROM founder ORDER BY id", 2)
    child, candidate = table("SELECT id, parent FROM candidate ORDER BY id", 2)
    database.close()
    counts = np.where(kind == CROSS, 2, np.where(kind == FOUNDER, 0, 1))
    counts[kind == MIXED] = 1 + (two[kind == MIXED] >= 0)
    extra = np.searchsorted(id, child)
    np.add.at(counts, extra, 1)
    start = np.concatenate([[0], np.cumsum(counts)])
    parents = np.empty(start[-1], dtype=np.int64)
    has_one, has_two = counts > 0, counts > 1
    parents[start[:-1][has_one]] = one[has_one]
    parents[start[:-1][has_two] + 1] = two[has_two]
    ordinal = np.arange(len(child)) - np.searchsorted(child, child)
    parents[start[extra] + 2 + ordinal] = candidate
    species = np.full(len(id), -1, dtype=np.int32)
    species[np.searchsorted(id, founders)] = codes
    return {
        "id": id,
        "origin": kind.astype(np.uint8),
        "parent_start": start,
        "parents": parents,
        "species": species,
        "selfing": np.zeros(len(id), dtype=np.uint8),
    }


def every_quantity(columns):
    """All facts of all plants; returns the pedigree."""
    pedigree = Pedigree.from_columns(**columns)
    pedigree.columns()
    return pedigree
