"""One file of the records joined out of three texts: before, here, there; and the questions it leaves."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import PurePath
from typing import Any

from pydantic import BaseModel, ValidationError

from recordgen.problems import Trouble, quoted
from recordgen.records.join.values import Clash, MergedRecord, merge
from recordgen.records.layout import home_of
from recordgen.records.models.horse import Horse, SharedFile
from recordgen.records.models.names import foot_named
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.receive.compare import path_words, value_line
from recordgen.records.receive.questions import Phrase, Question
from recordgen.records.receive.visits import in_order
from recordgen.records.receive.whose import Horses
from recordgen.records.yaml.tree import document
from recordgen.records.yaml.write import as_yaml
from recordgen.sentences import say, spoken_day

HERE, THERE = "here", "there"
WIDEST_VALUE = 60
_MODELS: dict[str, type[BaseModel]] = {
    "visit": Visit,
    "horse": Horse,
    "stable": Stable,
    "practice": PracticeFile,
    "sharing": SharedFile,
}
_COMMENT = re.compile(r"(?:^|\s)(#.*)")
# The lines of three texts joined by whoever joins lines of text, None where they do not go together.
JoinLines = Callable[[bytes, bytes, bytes], bytes | None]


@dataclass(frozen=True)
class FileStates:
    """One file that both sides changed. before, here, there: its bytes; None where there was no file."""

    path: str
    before: bytes | None
    here: bytes | None
    there: bytes | None

    @property
    def id(self) -> str:
        """Tells these states of this file from all others, for the questions about them."""
        told = b"\0".join(one or b"" for one in (self.path.encode(), self.here, self.there))
        return f"joined {self.path} {hashlib.sha256(told).hexdigest()[:8]}"


@dataclass
class JoinedFile:
    """The outcome. content: None where the file is gone. questions: until they are answered nothing is joined."""

    content: bytes | None
    questions: list[Question] = field(default_factory=list)


def join_file(
    sides: FileStates, about: str, phrase: Phrase, answer: Callable[[Question], str | None], lines: JoinLines
) -> JoinedFile:
    """One file joined reading by reading.

    about: the file in words. answer: the answer to a question, None while it is open. Raises Trouble where the joined
    record could not be read.
    """
    found = _records(sides)
    if found is None:
        return _whole(sides, about, phrase, answer)
    merged = merge(*found)
    questions = []
    for clash in merged.clashes:
        question = _question(sides, clash, about, phrase)
        chosen = answer(question)
        if chosen is None:
            questions.append(question)
        else:
            merged.settle(clash, clash.here if chosen == HERE else clash.there)
    return JoinedFile(sides.here, questions) if questions else JoinedFile(_text(sides, merged, found, lines))


def describe_file(path: str, horses: Horses) -> str:
    """A file of the records in words: Bramble at Willowmere, 3 June 2026."""
    home = home_of(PurePath(path))
    if home is None or not home.stable:
        return path
    stable = horses.stables.get(home.stable, home.stable)
    if not home.horse:
        return stable
    horse = horses.horses.get(f"{home.stable}/{home.horse}")
    name = f"{horse.name if horse else home.horse} at {stable}"
    return f"{name}, {spoken_day(home.day)}" if home.day else name


def _records(sides: FileStates) -> tuple[dict[str, Any], dict[str, Any], dict[str, Any]] | None:
    """The three states as values; None where the file is no record, is gone on a side, or cannot be read."""
    if not sides.path.endswith(".yaml") or sides.here is None or sides.there is None:
        return None
    values = []
    for raw in (sides.before or b"", sides.here, sides.there):
        found = document(sides.path, raw) if raw.strip() else None
        if found and (found.problems or not isinstance(found.values, dict)):
            return None
        values.append(found.values if found else {})
    return values[0], values[1], values[2]


def _whole(sides: FileStates, about: str, phrase: Phrase, answer: Callable[[Question], str | None]) -> JoinedFile:
    """A file that is joined as a whole: the one that is here, or the one that is there."""
    told = {
        HERE: phrase("gone_here" if sides.here is None else "file_here"),
        THERE: phrase("gone_there" if sides.there is None else "file_there"),
    }
    question = Question(sides.id, about, phrase("asks_file", file=sides.path), told)
    chosen = answer(question)
    return JoinedFile(sides.there if chosen == THERE else sides.here, [] if chosen else [question])


def _question(sides: FileStates, clash: Clash, about: str, phrase: Phrase) -> Question:
    where = path_words(clash.steps)
    choices = {
        HERE: phrase("value_here", value=_describe_value(clash.here)),
        THERE: phrase("value_there", value=_describe_value(clash.there)),
    }
    return Question(f"{sides.id} {'.'.join(clash.steps)}", about, phrase("asks_value", where=where), choices)


def _describe_value(value: Any) -> str:
    return "taken out" if value is None else value_line(value, WIDEST_VALUE)


def _text(
    sides: FileStates,
    merged: MergedRecord,
    found: tuple[dict[str, Any], dict[str, Any], dict[str, Any]],
    lines: JoinLines,
) -> bytes:
    """The text of a joined record: one that somebody typed where there is one, else written anew with all comments."""
    assert sides.here is not None
    assert sides.there is not None
    comments = dict.fromkeys((*_comments(sides.here), *_comments(sides.there)))
    for typed in (sides.here, sides.there, lines(sides.before or b"", sides.here, sides.there)):
        if typed is not None and comments.keys() <= set(_comments(typed)) and _says(sides.path, typed, merged):
            return typed
    home = home_of(PurePath(sides.path))
    model = _MODELS.get(home.part) if home else None
    record = in_order(merged.values, model) if model else dict(merged.values)
    if isinstance(record.get("feet"), dict):
        names = {foot_named(key): key for side in found[1:] for key in side.get("feet") or {}}
        record["feet"] = {names.get(foot_named(foot), foot): one for foot, one in record["feet"].items()}
    text = "".join(f"{line}\n" for line in comments) + as_yaml(record)
    _refuse_unreadable(sides.path, text, model)
    return text.encode()


def _says(path: str, text: bytes, merged: MergedRecord) -> bool:
    found = document(path, text)
    if found.problems or not isinstance(found.values, dict):
        return False
    return merge(found.values, found.values, found.values).values == merged.values


def _comments(raw: bytes) -> Iterator[str]:
    for line in raw.decode("utf-8", "replace").splitlines():
        found = _COMMENT.search(line)
        if found and found[1].strip("# "):
            yield found[1].strip()


def _refuse_unreadable(path: str, text: str, model: type[BaseModel] | None) -> None:
    found = document(path, text.encode())
    try:
        if model and not found.problems:
            model.model_validate(found.values)
            return
    except ValidationError as wrong:
        told = "; ".join(str(one["msg"]) for one in wrong.errors(include_url=False)[:2])
        raise Trouble(
            say("{path} cannot be joined: {told}", path=quoted(path, 80), told=told),
            say("Make both sides fit, then try again"),
        ) from None
    if found.problems:
        raise Trouble(
            say("{path} cannot be joined", path=quoted(path, 80)), say("Make both sides the same, then try again")
        )
