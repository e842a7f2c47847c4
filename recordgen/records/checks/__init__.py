"""What a single value cannot tell: dates, names, sides, doubles; a list of small checks a kind of record."""
