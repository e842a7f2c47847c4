"""A copy of the whole practice at another place, and the way of two computers: records with their history, keys sealed.

Open `back_up.py` first (to a bare repository on a stick or elsewhere, read back to the last byte), then `restore.py`
(a new computer out of it) and `fetch.py` (what the other computer kept, joined with what is here). `place.py` tells
where a copy may lie, `copied_keys.py` what travels of the keys. Keys leave this computer under six words alone.
"""
