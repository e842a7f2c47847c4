"""A sole as a picture takes it."""

from __future__ import annotations

from recordgen.pictures.tracing.sole import TracedSole

WALL = ((-45.0, 0.0), (-65.0, 50.0), (-40.0, 110.0), (0.0, 125.0), (40.0, 110.0), (65.0, 50.0), (45.0, 0.0))
WHITE = tuple((x * 0.85, y * 0.9) for x, y in WALL)
SOLE = TracedSole(
    wall=WALL,
    white_line=WHITE,
    frog=((-25.0, 5.0), (0.0, 85.0), (25.0, 5.0)),
    bars=(((-38.0, 3.0), (-20.0, 45.0)), ((38.0, 3.0), (20.0, 45.0))),
    best_axis=((0.0, 60.0), 5.0),
    breakover=(0.0, 117.0),
    flares=(((62.0, 45.0), (65.0, 50.0), (62.0, 60.0), (60.0, 50.0)),),
)
