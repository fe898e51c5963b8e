"""One module for each thing a sheet may list: `declare`, `plan` and `write` its rows."""
