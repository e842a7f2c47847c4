"""The pass over all records that counts what stables are told of each other, and the look whether it fits."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from pathlib import Path

from recordgen import __version__
from recordgen.cache.entries import Cache
from recordgen.files import list_files
from recordgen.git.state import present_entry
from recordgen.hoof.measures.repeatability import own_errors
from recordgen.problems import Trouble, quoted
from recordgen.records.history.trails import private_entries
from recordgen.records.load.everything import Whole, read_one_stable
from recordgen.records.load.folders import SHARED
from recordgen.sentences import counted, say
from recordgen.site.apart.counts import ANEW, Counts, OwnError
from recordgen.site.build_context import BuildContext


def count(whole: Whole, context: BuildContext) -> Counts:
    """The counts of a practice that was read whole. context: made of it, with its summaries."""
    practice, computed = whole.practice, context.summaries
    errors = own_errors(whole.reference, practice.file.methods, whole.repeated)
    shares = {slug: now for slug, (now, _) in computed.shares.items()} if computed else {}
    trails = (trail for horse in context.trails.values() for trail in horse if trail)
    return Counts(
        version=__version__,
        today=context.today,
        shared=shared_digest(practice.folder),
        history=present_entry(practice.folder),
        errors=tuple(
            OwnError(measure=measure, way=way, sd=own.sd, sets=own.sets, freedom=own.freedom)
            for (measure, way), own in sorted(errors.items())
            if own.counts
        ),
        hand_times=context.ways.hand_times,
        private=tuple(sorted(private_entries(trails))),
        stables={
            slug: {key: (one.count, one.looked, one.seen) for key, one in found.items()}
            for slug, found in shares.items()
        },
    )


def read_counted(records: Path, today: dt.date, stable: str, counts: Counts, cache: Cache) -> Whole:
    """One stable from its own folder and what all share. Raises Trouble where the counts do not fit what is here.

    cache: of what looking over visits told.
    """
    if stable not in counts.stables:
        known = say(
            "They know {stables}: {names}",
            stables=counted(len(counts.stables), "stable"),
            names=", ".join(counts.stables),
        )
        raise Trouble(
            say("the counts know no stable {stable}", stable=quoted(stable)),
            say("{known}. {anew}", known=known, anew=ANEW),
        )
    if counts.today != today:
        raise Trouble(
            say("the counts are as of {today}, not {day}", today=counts.today, day=today),
            say("Say --today {today}. Or: {anew}", today=counts.today, anew=ANEW),
        )
    if counts.shared != shared_digest(records):
        raise Trouble(
            say("one of {shared} is not as it was for the counts", shared=", ".join(sorted(SHARED))),
            say("Copy them anew. Or: {anew}", anew=ANEW),
        )
    if counts.history != (here := present_entry(records)):
        message = say(
            "the counts were made where git tells {history}, and here it tells {here}",
            history=quoted(counts.history),
            here=quoted(here),
        )
        raise Trouble(message, say("Fetch that entry with its whole history. Or: {anew}", anew=ANEW))
    return read_one_stable(records, today, stable, counts.stables.keys(), cache)


def shared_digest(records: Path) -> str:
    """The SHA-256 of the names and bytes of all that stables share. Raises OSError."""
    names = [name for name in SHARED if (records / name).is_file()]
    names += [
        f"{name}/{inside}" for name in SHARED if (records / name).is_dir() for inside in list_files(records / name)
    ]
    held = {name: hashlib.sha256((records / name).read_bytes()).hexdigest() for name in sorted(names)}
    return hashlib.sha256(json.dumps(held).encode("utf-8", "surrogatepass")).hexdigest()
