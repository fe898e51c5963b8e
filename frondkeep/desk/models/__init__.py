from frondkeep.desk.models.imports import ImportBatch, ImportedRow, ImportSheet

__all__ = ["ImportBatch", "ImportSheet", "ImportedRow"]
