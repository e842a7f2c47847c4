"""The tracing screen: a photograph's points tapped in a browser of this machine. Open `screen.py` first.

`photo.py` finds out what is traced, `page.py` makes the page of the files in `site_templates/trace`, `serve.py` shows
it, `keep.py` takes the tracing in.
"""
