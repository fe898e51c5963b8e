from frondkeep.shows.models.entries import Entry, EntryPlant, Exhibitor
from frondkeep.shows.models.shows import Show, ShowClass

__all__ = ["Entry", "EntryPlant", "Exhibitor", "Show", "ShowClass"]
