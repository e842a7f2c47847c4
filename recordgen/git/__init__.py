"""Git, as the one program of somebody else's that the records are kept by: asked, told to keep, told to send.

Open `run.py` first (one runner, and what of this computer's settings reaches git), then `changes.py` (what changed
since the last entry), `keep.py` (new entries), `log.py` (the entries so far), `repository.py` (what the repository is
and holds), `remotes.py` (where its remotes lead), `copies.py` and `join.py` (a copy elsewhere, two lines joined). This
room must never know what a record is.
"""
