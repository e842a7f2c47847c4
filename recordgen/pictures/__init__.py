"""Pictures of a foot and its history, as SVG to stand inside a page.

Open `charts/through_time.py` first for the panels of a horse's history, `feet/foot.py` for the feet seen from below,
`tracing/sole.py` for traced feet. All of them draw on a `canvas.py` sheet with the forms of `shapes.py`; `svg.py` alone
knows matplotlib. `cache.py` remembers what was drawn.

A picture takes numbers and words and gives back a string. It must never compute a figure of the hoof, read a record,
know a path or make up words: `cache.py` alone touches a folder, the one it was given.
"""
