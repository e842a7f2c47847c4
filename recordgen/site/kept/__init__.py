"""The work of earlier builds, used again where it would come out the same.

Open `standing.py` first (the sites that stand, and what each part of them was made from), then `summaries.py` (what is
asked of a horse whose own pages stand), `days.py` (what stands, on another day) and `digest.py` (the records by their
bytes).
"""
