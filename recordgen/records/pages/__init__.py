"""A practice's own pages in Markdown: beside its own file for every site, in a stable's folder for that site alone.

Open `files.py` first (the files of a folder, each as an `OwnPage`), then `markdown.py` (what is read and what is not)
and `checks.py` (links, names and titles of all pages of one site).
"""
