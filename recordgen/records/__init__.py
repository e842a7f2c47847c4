"""Records as written down: the models of the records, and reading them with the line of every value.

Open `models/visit.py` and `models/foot.py` first (what a visit holds; `models/tracing.py`: what was traced on a
picture), then `yaml/read.py` (a file to a model, or problems) and `load/practice.py` (a folder to a `Practice`).
`checks/` looks at what one file's form cannot tell, `write/` writes files for the trimmer, `history/` tells what git
knows of each visit, `photos/` takes photographs in, `receive/` what was written down on a phone, and `sheets/`
reads and writes tables. `join/` joins what two computers wrote.
This room must never compute what a record means, nor draw or publish it.
"""
