"""Results kept for the next time: given back whole and as they were kept, or not at all.

Open `entries.py` first (what is kept under a key, and how damage shows), then `place.py` (where it lies, how large it
is, how it is cleared and pruned). `spelling.py` names results by all that they come from, `versions.py` by the program
that made them; `watched_day.py` tells for which days one stands. Whatever is missing, damaged, foreign or of another
version is made anew by whoever asked: this room costs time at worst. It must never keep anything that is executed, nor
know what a record is.
"""
