"""Claims: which changes of a page are told as real, and by what rule. Open `claims.py` first.

`statistic.py` weighs a step or a ramp against no change, `null_table.py` says how often chance alone reaches as far,
`discoveries.py` holds the false claims of a whole page down, `estimate.py` says since when and how much. What
rounding adds to an error stands with the measures. No file, no clock, no words for people.
"""
