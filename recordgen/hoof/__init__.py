"""What the records mean: pure functions from models to one `HorseSummary` per horse.

Open `summary.py` first. `measures.py` knows how a measure is read from a visit and how well it repeats; `growth.py`,
`due.py`, `cautions.py`, `care.py`, `findings.py` and `balance.py` each answer one question. This room opens no file,
looks at no clock and no network; words come in with the reference tables.
"""
