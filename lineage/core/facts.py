"""The facts of all parentage classes, as columns."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from lineage.core.compositions import Compositions
from lineage.core.walk import DEPTH, FAR, NOBODY_FACTS, ClassFacts

Ints = npt.NDArray[np.int64]
Floats = npt.NDArray[np.float64]


@dataclass(slots=True)
class ClassTable:
    """One row a parentage class; see `ClassFacts` for what the columns mean. NaN is no completeness."""

    level: Ints
    gen_min: Ints
    gen_max: Ints
    eq_lo: Floats
    eq_hi: Floats
    recorded: Floats
    unsettled: Ints
    completeness: Floats
    f_lo: Floats
    f_hi: Floats
    compositions: Compositions

    @classmethod
    def blank(cls, level: Ints) -> ClassTable:
        """Return the table of so many classes, all like a founder's, the first like nobody's."""
        size = len(level)
        table = cls(
            level=level,
            gen_min=np.zeros(size, dtype=np.int64),
            gen_max=np.zeros(size, dtype=np.int64),
            eq_lo=np.zeros(size),
            eq_hi=np.zeros(size),
            recorded=np.zeros((size, DEPTH)),
            unsettled=np.full(size, FAR, dtype=np.int64),
            completeness=np.zeros(size),
            f_lo=np.zeros(size),
            f_hi=np.zeros(size),
            compositions=Compositions(),
        )
        table.recorded[1:, 0] = 1
        table.put(0, NOBODY_FACTS)
        return table

    def facts(self, k: int) -> ClassFacts:
        """Return the facts of a class as plain Python."""
        completeness = float(self.completeness[k])
        return ClassFacts(
            level=int(self.level[k]),
            gen_min=int(self.gen_min[k]),
            gen_max=int(self.gen_max[k]),
            eq=(float(self.eq_lo[k]), float(self.eq_hi[k])),
            recorded=tuple(self.recorded[k].tolist()),
            unsettled=int(self.unsettled[k]),
            completeness=None if completeness != completeness else completeness,
            inbreeding=(float(self.f_lo[k]), float(self.f_hi[k])),
            composition=self.compositions.of(k),
        )

    def put(self, k: int, facts: ClassFacts) -> None:
        """Write the facts of a class."""
        self.level[k] = facts.level
        self.gen_min[k], self.gen_max[k] = facts.gen_min, facts.gen_max
        self.eq_lo[k], self.eq_hi[k] = facts.eq
        self.recorded[k] = facts.recorded
        self.unsettled[k] = facts.unsettled
        self.completeness[k] = np.nan if facts.completeness is None else facts.completeness
        self.f_lo[k], self.f_hi[k] = facts.inbreeding
        self.compositions.put(k, facts.composition)
