"""What was written down: the models of the records, and reading them with the line of every value.

Open `visit.py` and `foot.py` first (what a visit holds; `tracing.py`: what was traced on a picture of a foot), then
`reading.py` (YAML to model, or problems) and `archive.py` (a folder of records to a `Practice`). `yaml_*.py` read YAML
with places, `wording.py` tells what is wrong, `comments.py` what YAML would drop, `checks.py`, `tracing_checks.py` and
`known.py` look at what one file's form cannot tell, `starting.py` and `founding.py` write new files, `history.py` tells
what git knows of each visit, `photos.py` and `photo_*.py` hold the photographs, `shared.py` is the log of whom a record
was handed to. This room must never compute what a record means, nor draw or publish it.
"""
