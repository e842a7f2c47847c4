"""The parts of a horse's page, arranged from its summary; nothing is computed here that another page tells too.

Open `parts.py` first: one foot's part and what is told first. `courses.py` holds toe lengths of the last year and what
is expected since; `glance.py` places what was found along the days in per cent, so that a page can stretch it;
`overlay.py` chooses two photographs to lay over each other; `comparing.py` holds the figures of all visits for setting
two days side by side.
"""
