"""Pictures of a foot and its history, as SVG to stand inside a page.

Open `charts/through_time.py` first for the panels of a horse's history, `feet/foot.py` for the feet seen from below,
`tracing/sole.py` for traced feet. All of them are artists on matplotlib's axes, which `axes.py` makes once and reuses:
charts have ticks and a frame (`charts/panel.py`, `charts/rate_axes.py`, `tracing/ring_axes.py`), drawings axes of equal
aspect. They are put there through a `canvas.py`; `svg.py` makes what matplotlib writes fit for a page, and
`site_templates/pictures/pictures.mplstyle` holds the look. `cache.py` remembers what was drawn.

A picture takes numbers and words and gives back a string. It must never compute a figure of the hoof, read a record or
make up words. Modules that load matplotlib are imported by the first picture really drawn, and by no other.
"""
