"""Logging plants: what a member typed, read and asked about before anything is kept."""
