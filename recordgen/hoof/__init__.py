"""The meaning of the records: pure functions from models to one `HorseSummary` per horse.

Open `summary.py` first: it asks every other room here. `measures/` knows how a measure is read from a visit and how
well it repeats; `claims/` holds the one rule by which a page tells a change; `growth/` goes from cycles by rate and
season to what grows out; `tracing/` measures traced feet; `cautions/`, `care/` and `due.py` say what to do. Over
several horses look `rounds/` (the fewest days) and `stable/` (what a stable's horses share); `export/` hands all of it
to other programs. This room opens no file, looks at no clock and no network; words come in with the reference tables.
"""
