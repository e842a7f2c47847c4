"""The rules that raise a caution or end it, one small function each; `table.py` lists them all."""
