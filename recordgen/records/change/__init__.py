"""Changes of the records that a command makes for the trimmer: whole or not at all, and one entry of git each.

Open `change.py` first (what a change is, and how it is made), then `begin.py`, `rename.py`, `move.py`, `end.py`,
`contact.py` and `correct.py`, which plan one, and `undo.py`, which takes the last entry back by another.
A plan reads and writes nothing but what it names; this room must never ask, print or look at a clock.
"""
