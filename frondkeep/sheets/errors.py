"""What is said when a sheet cannot be printed."""


class SheetError(Exception):
    """A sheet cannot be printed as asked.

    Parameters
    ----------
    reason
        What is wrong and what to do, in words for the person who wanted the sheet.
    row
        Which row is to blame, as "class 3, entry 14"; empty when it is no single row.
    characters
        The characters no font of ours can print, when that is the reason.
    """

    def __init__(self, reason: str, *, row: str = "", characters: tuple[str, ...] = ()) -> None:
        super().__init__(f"{row}: {reason}" if row else reason)
        self.reason = reason
        self.row = row
        self.characters = characters
