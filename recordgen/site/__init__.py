"""Sites to read: the pages of a site, and the sites of a practice.

Open `pages/sites.py` first (summaries to HTML), then `build.py` (many sites, each whole before it takes the old one's
place). `calendar.py` writes the days for calendar programs, `drawings/` and `tracing/` take out of the summaries what
pictures are drawn from, `prose/` reads the pages that are written in Markdown, `kept/` uses the work of earlier builds
again. `plugin.py` and `engine.py` are the only files that know MkDocs. This room computes no figure: every number on a
page comes from a `HorseSummary`.
"""
