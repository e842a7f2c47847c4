"""The demo practice: an invented round of three stables over two years, written as a person would have typed it.

`python -m tests.demo` writes `records/` anew, the same to the byte. Open `practice.py` first (what is written), then
`horses/` (one file a story), `feet.py` (how feet grow between visits) and `visits.py` (what a visit says). Benchmarks
use `generated.py`, which makes a practice of any size. Nothing here may need a clock or a network.
"""
