"""What the records mean: pure functions from models to one `HorseSummary` per horse.

Open `summary.py` first. `measures.py` knows how a measure is read from a visit and how well it repeats; `due.py`,
`cautions.py`, `care.py`, `findings.py` and `balance.py` each answer one question. Growth goes from `cycles.py` by
`rate.py` and `season.py` to `growth.py`, and on to `growing_out.py` and `forecasts.py`. `claims/` holds the one rule by
which a page tells a change. Over several horses look
`rounds.py` (the fewest days) and `patterns.py` (what a stable's horses share). This room opens no file, looks at no
clock and no network; words come in with the reference tables.
"""
