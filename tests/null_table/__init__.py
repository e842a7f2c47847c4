"""Rebuilds the stored table of what chance alone reaches: `python -m tests.null_table` writes it anew."""
