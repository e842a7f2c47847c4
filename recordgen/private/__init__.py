"""Who may read it: sealing a stable's site, delivering it, and one horse in a file of its own for the vet.

Open `sealing.py` first (a built site to files that nobody reads without the words), then `deliver.py` (to a folder, a
branch, a command) and `sharing.py` (one horse for the vet). Keys live in a folder of this user's alone, outside every
repository; this room must never write one anywhere else, nor print words twice.
"""
