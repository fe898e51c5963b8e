"""Spreadsheets in: guarded, read in a process of its own, understood, shown, and only then written."""
