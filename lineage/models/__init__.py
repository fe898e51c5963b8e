from lineage.models.nodes import (
    CLONE_ORIGINS,
    SPORE_ORIGINS,
    ClassShare,
    LineageNode,
    LineageParent,
    Origin,
    ParentageClass,
)
from lineage.models.suspicions import AppendOnlyError, Kind, Ruling, Suspicion

__all__ = [
    "CLONE_ORIGINS",
    "SPORE_ORIGINS",
    "AppendOnlyError",
    "ClassShare",
    "Kind",
    "LineageNode",
    "LineageParent",
    "Origin",
    "ParentageClass",
    "Ruling",
    "Suspicion",
]
