"""A stable's site built apart from the others, on another computer perhaps, with the bytes of a build of all.

Open `counts.py` first (what a stable must be told of the others), then `count.py` (the pass over all records that
tells it).
"""
