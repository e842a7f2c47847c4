"""Languages in which people read: days, numbers, lists and plurals by CLDR, sentences by catalogs.

Open `spoken.py` first; `catalogs.py` reads the catalogs of a language, `direction.py` sets apart what is
written from right to left. No record is known here, and English asks for no
catalog and no library.
"""
