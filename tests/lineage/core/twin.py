"""A slow and obvious pedigree in fractions: each quantity as its definition reads, by recursion."""

from fractions import Fraction
from functools import cached_property, lru_cache

from lineage.core import Node

HALF = Fraction(1, 2)
CLONES = ("division", "apogamous")


class Twin:
    """Answers like a pedigree, but with fractions; nodes must have no cycle."""

    def __init__(self, nodes: list[Node], dropped: set = frozenset()) -> None:
        self.nodes = {node.id: node for node in nodes}
        for id in dropped:
            self.nodes[id] = Node(id, "unknown")
        for name in ("unsettled_within", "share", "gens", "eq", "f", "theta", "level", "parentage"):
            setattr(self, name, lru_cache(maxsize=None)(getattr(self, f"_{name}")))

    def clone_parent(self, id):
        node = self.nodes[id]
        return node.parents[0] if node.origin in CLONES else None

    def genet(self, id):
        parent = self.clone_parent(id)
        return id if parent is None else self.genet(parent)

    def clonal_steps(self, id):
        parent = self.clone_parent(id)
        return 0 if parent is None else self.clonal_steps(parent) + (not self.nodes[id].by_name)

    def clone_line(self, id):
        parent = self.clone_parent(id)
        return id if parent is None or self.nodes[id].sport else self.clone_line(parent)

    def _parentage(self, genet):
        """Return the kind of a genet and its parents as genets."""
        node = self.nodes[genet]
        if node.origin not in ("self", "cross", "mixed"):
            return "founder", ()
        genets = [None if p is None else self.genet(p) for p in node.parents]
        distinct = sorted({g for g in genets if g is not None}, key=str) + [None] * genets.count(None)
        if node.origin == "self":
            return f"self {node.selfing}", tuple(distinct)
        if node.origin == "cross":
            return ("cross", tuple(genets)) if len(distinct) == 2 else ("self None", tuple(distinct))
        if len(distinct) == 1 and distinct != [None]:
            return "self None", tuple(distinct)
        if node.selfs_excluded:
            return "cross" if len(distinct) == 2 else "mixed cross", tuple(distinct)
        return "mixed", tuple(distinct)

    def inherit(self, kind, parts):
        """Bounds of what is the mean of two parents, from the bounds of the candidates."""
        lows, highs = sorted(low for low, _ in parts), sorted(high for _, high in parts)
        if kind.startswith("self") or kind == "mixed":
            return lows[0], highs[-1]
        return (lows[0] + lows[1]) / 2, (highs[-1] + highs[-2]) / 2

    def shares(self, genet):
        given = self.nodes[genet].composition or {None: 1}
        return {species: Fraction(share) for species, share in given.items()}

    def species(self, genet):
        """All that founders above name; None where a plant not known is among them."""
        if genet is None:
            return {None}
        kind, parents = self.parentage(genet)
        if kind == "founder":
            return set(self.shares(genet))
        return set().union(*(self.species(p) for p in parents))

    def _share(self, genet, species):
        if genet is None:
            return (Fraction(species is None), Fraction(1))
        kind, parents = self.parentage(genet)
        if kind == "founder":
            own = self.shares(genet)
            known = own.get(species, Fraction(0))
            return known, known if species is None else known + own.get(None, 0)
        return self.inherit(kind, [self.share(p, species) for p in parents])

    def composition(self, id):
        genet = self.genet(id)
        return {species: self.share(genet, species) for species in self.species(genet)}

    def _gens(self, genet):
        if genet is None or self.parentage(genet)[0] == "founder":
            return 0, 0
        above = [self.gens(p) for p in self.parentage(genet)[1]]
        return 1 + min(low for low, _ in above), 1 + max(high for _, high in above)

    def _eq(self, genet):
        kind, parents = self.parentage(genet)
        if kind == "founder":
            return Fraction(0), Fraction(0)
        above = [(0, 0) if p is None else tuple(1 + end for end in self.eq(p)) for p in parents]
        return self.inherit(kind, above)

    def ancestors_at(self, genet, generation):
        """The 2^generation ancestors, None for one that is not recorded."""
        if generation == 0:
            return [genet]
        kind, parents = ("founder", ()) if genet is None else self.parentage(genet)
        sides = (None, None) if kind == "founder" else (parents[0], parents[-1])
        return [a for side in sides for a in self.ancestors_at(side, generation - 1)]

    def _unsettled_within(self, genet, generations):
        if genet is None or generations < 0:
            return False
        kind, parents = self.parentage(genet)
        return kind.startswith("mixed") or any(self.unsettled_within(p, generations - 1) for p in parents)

    def completeness(self, id):
        genet = self.genet(id)
        if self.unsettled_within(genet, 5):
            return None
        kind, parents = self.parentage(genet)
        if kind == "founder":
            return 0
        sides = [self.side(parents[0]), self.side(parents[-1])]
        return 2 / (1 / sides[0] + 1 / sides[1]) if all(sides) else 0

    def side(self, parent):
        recorded = Fraction(0)
        for i in range(1, 6):
            ancestors = self.ancestors_at(parent, i - 1)
            recorded += Fraction(sum(a is not None for a in ancestors), len(ancestors))
        return recorded / 5

    def _f(self, genet):
        if genet is None:
            return Fraction(0), Fraction(0)
        kind, parents = self.parentage(genet)
        if kind == "founder":
            return Fraction(0), Fraction(0)
        if kind == "self intra":
            return Fraction(1), Fraction(1)
        selfs = [(1 + self.f(p)[0]) / 2 for p in parents]
        if kind.startswith("self"):
            return selfs[0], (1 + self.f(parents[0])[1]) / 2 if kind == "self inter" else Fraction(1)
        pairs = [self.theta(a, b) for i, a in enumerate(parents) for b in parents[i + 1 :]]
        if kind == "mixed":
            return min(selfs + [low for low, _ in pairs]), Fraction(1)
        return min(low for low, _ in pairs), max(high for _, high in pairs)

    def _level(self, genet):
        if genet is None or self.parentage(genet)[0] == "founder":
            return 0
        return 1 + max(self.level(p) for p in self.parentage(genet)[1])

    def _theta(self, a, b):
        if a is None or b is None:
            return Fraction(0), Fraction(0)
        if a == b:
            low, high = self.f(a)
            return (1 + low) / 2, (1 + high) / 2
        if self.level(a) == self.level(b) == 0:
            return Fraction(0), Fraction(0)
        if self.level(a) != self.level(b):
            older, younger = sorted((a, b), key=self.level)
            return self.expand(younger, older)
        unsettled = [g for g in (a, b) if self.parentage(g)[0].startswith("mixed")]
        if len(unsettled) == 2:
            ways = [self.expand(a, b), self.expand(b, a)]
            return max(low for low, _ in ways), min(high for _, high in ways)
        return self.expand(b, a) if unsettled == [b] else self.expand(a, b)

    def expand(self, younger, older):
        kind, parents = self.parentage(younger)
        return self.inherit(kind, [self.theta(p, older) for p in parents])

    def kinship(self, a, b):
        return self.theta(self.genet(a), self.genet(b))

    @cached_property
    def children(self):
        found = {}
        for node in self.nodes.values():
            for parent in node.parents:
                found.setdefault(parent, set()).add(node.id)
        return found
