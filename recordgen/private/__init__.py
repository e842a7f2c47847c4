"""Tell who may read it: sealing a stable's site, delivering it, and one horse in a file of its own for the vet.

Open `sealing/seal.py` first (a built site to files that nobody reads without the words), then `publishing/publish.py`
(to a folder, a branch, a command) and `sharing/share.py` (one horse for the vet). `backup/` copies everything to
another place and brings it back. Keys lie in `keystore/`'s folder, of this user alone and outside every repository;
this room must never write one anywhere else unless it is sealed, nor print words twice.
"""
