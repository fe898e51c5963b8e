from lineage.models.nodes import (
    CLONE_ORIGINS,
    SPORE_ORIGINS,
    ClassShare,
    LineageNode,
    LineageParent,
    Origin,
    ParentageClass,
)

__all__ = [
    "CLONE_ORIGINS",
    "SPORE_ORIGINS",
    "ClassShare",
    "LineageNode",
    "LineageParent",
    "Origin",
    "ParentageClass",
]
