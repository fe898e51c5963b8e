"""Pedigrees of plants that are divided and sown: clones, composition, generations, inbreeding, kinship.

Pure computing on plain ids; nothing of it knows how records are kept.
"""

from lineage.core.nodes import ORIGINS, Contradiction, Fact, Node, PedigreeError
from lineage.core.pedigree import Pedigree

__all__ = ["ORIGINS", "Contradiction", "Fact", "Node", "Pedigree", "PedigreeError"]
