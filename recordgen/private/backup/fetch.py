"""Brings what the other computer kept, by way of the copy, and joins it with what is here, reading by reading.

Nothing changes until every question is answered; then the files are put in place, and a run that was killed goes on.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path, PurePath

from recordgen.git import copies
from recordgen.git.changes import kinds_of_change
from recordgen.git.copies import (
    MAIN_LINE,
    MET_SIDE,
    SIDE_LINE,
    common_entry,
    entries_between,
    entry_of,
    fetch_lines,
    file_in,
    is_before,
    name_entry,
    remember_copy_address,
)
from recordgen.git.join import (
    BothSides,
    changed_contents,
    content_of,
    end_taking_over,
    join_lines,
    join_texts,
    take_over,
    tree_with,
    write_joined_entry,
)
from recordgen.git.keep import HOOKS
from recordgen.locks import hold_lock
from recordgen.private.backup.copied_keys import FILE, AskWords, CopiedKeys
from recordgen.private.backup.place import refuse_missing, refuse_shared
from recordgen.problems import Trouble, quoted
from recordgen.records.join.files import HERE, THERE, FileStates, describe_file, join_file
from recordgen.records.receive.questions import Phrase, Question
from recordgen.records.receive.whose import Horses
from recordgen.sentences import say

SAYS = "Both computers joined"


@dataclass
class FetchOutcome:
    """The outcome. entries: what the other computer kept. joined: files that both changed, in words. open: questions.

    keys: files of keys that came. without_words: the keys wait until somebody knows the words.
    """

    entries: list[str] = field(default_factory=list)
    joined: list[str] = field(default_factory=list)
    open: list[Question] = field(default_factory=list)
    keys: tuple[str, ...] = ()
    without_words: bool = False


@dataclass(frozen=True)
class Asking:
    """The ways to ask. answer: to a question, None while it is open."""

    phrase: Phrase
    answer: Callable[[Question], str | None]
    words: AskWords


def fetch(records: Path, address: str, horses: Horses, asking: Asking) -> FetchOutcome:
    """Bring and join.

    Raises Trouble where the copy is another practice's, and where what is here is not kept in git.
    """
    refuse_shared(records)
    refuse_missing(address)
    with hold_lock(records, say("the records are being joined")):
        end_taking_over(records)
        standing = fetch_lines(records, address)
        if MAIN_LINE not in standing:
            raise Trouble(say("there are no records in that copy yet"), say("Put them there first: recordgen backup"))
        found = _records(records, standing[MAIN_LINE], horses, asking)
        if found.open:
            return found
        remember_copy_address(records, address)
        if SIDE_LINE in standing:
            _keys(records, standing[SIDE_LINE], found, asking)
    return found


def _records(records: Path, there: str, horses: Horses, asking: Asking) -> FetchOutcome:
    here = entry_of(records, "HEAD")
    if here is None:
        raise Trouble(say("nothing is kept in git yet"), say("Keep it first: recordgen commit"))
    if is_before(records, there, here):
        return FetchOutcome()
    base = common_entry(records, here, there)
    if base is None:
        raise Trouble(say("that copy is of another practice"), say("Look at its address"))
    found = FetchOutcome(entries_between(records, here, there))
    if base == here:
        _refuse_touched(records, there)
        take_over(records, there)
        return found
    made = join_lines(records, here, there, base)
    files: dict[str, bytes | None] = {}
    for both in made.both:
        about = describe_file(both.path, horses)
        joined = join_file(_sides(records, both), about, asking.phrase, asking.answer, join_texts)
        found.open += joined.questions
        found.joined.append(about)
        files[both.path] = joined.content
    if found.open:
        return FetchOutcome(open=found.open)
    entry = write_joined_entry(records, tree_with(records, made.tree, files), here, there, SAYS)
    _refuse_touched(records, entry)
    take_over(records, entry)
    return found


def _sides(records: Path, both: BothSides) -> FileStates:
    before, here, there = (content_of(records, name) if name else None for name in (both.before, both.here, both.there))
    return FileStates(both.path, before, here, there)


def _refuse_touched(records: Path, entry: str) -> None:
    """Raises Trouble where an entry may not be taken over.

    That is where a file that is not kept in git would be touched, where one that git has was changed since, and where
    another program than now would be run on this computer.
    """
    changed = {path.relative_to(records).as_posix(): kind for path, kind in kinds_of_change(records).items()}
    touched = changed_contents(records, "HEAD", entry)
    open_ = [name for name, kind in changed.items() if kind != "added" or name in touched]
    if open_:
        file = quoted(PurePath(open_[0]).as_posix(), 80)
        message = say("{file} is not kept in git yet", file=file)
        if len(open_) > 1:
            message = say("{file} and {number} more is not kept in git yet", file=file, number=len(open_) - 1)
        raise Trouble(message, say("Keep it first: recordgen commit; then run this again"))
    programs = sorted(name for name in touched if name.startswith(f"{HOOKS}/"))
    if programs:
        message = say(
            "the other computer changed {programs}, which git runs on this one", programs=quoted(programs[0], 80)
        )
        line = copies.THERE[MAIN_LINE]
        way_out = say(
            "Look at it: git diff HEAD {line} -- {hooks}. Where it is yours, take it over: git checkout {line} -- "
            "{hooks}, then git commit, then run this again",
            line=line,
            hooks=HOOKS,
        )
        raise Trouble(message, way_out)


def _keys(records: Path, there: str, found: FetchOutcome, asking: Asking) -> None:
    """Take in the keys of the copy. Raises Trouble; the records are joined by then."""
    keys = CopiedKeys.read(records)
    if there == entry_of(records, MET_SIDE):
        return
    states = keys.open_keys(file_in(records, there, FILE), asking.words)
    if states is None:
        found.without_words = True
        return

    def keeps_ours(name: str, here: str, other: str) -> bool | None:
        asks = asking.phrase("asks_keys", name=name, here=here, there=other)
        choices = {HERE: asking.phrase("keys_here"), THERE: asking.phrase("keys_there")}
        question = Question(f"keys {name} {there[:8]}", name, asks, choices)
        chosen = asking.answer(question)
        if chosen is None:
            found.open.append(question)
        return None if chosen is None else chosen == HERE

    found.keys = keys.take_in(states, keeps_ours)
    if not found.open:
        keys.keep_met(states)
        name_entry(records, MET_SIDE, there)
