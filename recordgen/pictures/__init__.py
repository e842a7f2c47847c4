"""pictures: what a foot and its history look like, as SVG to stand inside a page.

Open `through_time.py` first for the panels of a horse's history, `feet.py` for the feet seen from below, `explained.py`
for the drawings that explain the words, `rates.py`, `growing_out.py` and `weeks.py` for growth, what grows out of the
wall, and the coming weeks. All of them draw on a `canvas.py` sheet with the forms of `shapes.py`;
`ink.py` alone knows matplotlib. `kept.py` remembers what was drawn.

A picture takes numbers and words and gives back a string. It must never compute a figure of the hoof, read a record,
know a path or make up words: `kept.py` alone touches a folder, the one it was given.
"""
