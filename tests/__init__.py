"""The tests mirror the code: the package keeps tests/lineage from standing in for lineage."""
