"""Checks that a single value cannot make: dates, names, sides, doubles; a list of small checks a kind of record."""
