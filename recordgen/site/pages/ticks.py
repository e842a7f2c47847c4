"""Keys by which a reader's own device keeps the ticks of jobs; `assets/ticks.js` reads them."""

from __future__ import annotations

import hashlib

from recordgen.hoof.care.jobs import Job

KEY_LETTERS = 16


def tick_key(stable: str, horse: str, job: Job) -> str:
    """The key of one job of a horse, the same on every page; it names neither stable nor horse to who sees the device.

    stable, horse: their folders. A note of the library keeps its key when its words change.
    """
    named = "\n".join((stable, horse, job.key or job.what))
    return hashlib.sha256(named.encode()).hexdigest()[:KEY_LETTERS]
