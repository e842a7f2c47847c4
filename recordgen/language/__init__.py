"""Languages and units in which people read: days, numbers and lists by CLDR, sentences by catalogs, lengths in inches.

Open `spoken.py` first. `catalogs.py` reads the catalogs of a language, `units.py` tells a length or a weight in the
unit a practice shows. No record is known here, and English asks for no catalog and no library.
"""
