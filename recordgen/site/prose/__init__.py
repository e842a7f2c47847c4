"""Prose: pages written in Markdown, ours among the templates and a practice's own.

Open `render.py` first. `values.py` keeps what was typed in a record out of Markdown's sight, `sections.py` gives the
pages their form, `sized_pictures.py` their pictures a place, `guide.py` reads the guide for the trimmer.
"""
