"""The file that the field page hands over: lines of text, each with a sum or a seal of its own.

    {"field_notes":1,"file":"k7q2mfa3b","to":"…","key":"…","lines":4}
    1 …   the head: the practice, and the day on which the page was made
    2 …   a visit, which names its photographs
    3 …   a photograph
    4 …   the end

Behind its number a sealed line holds base64url of AES-GCM; one that is not sealed holds its SHA-256 (or `-`) and JSON.
A file that was cut short gives every whole line before the cut; a line that was changed is named, and the others go on.
"""

from __future__ import annotations

import hashlib
import json
import re
from collections.abc import Callable, Iterable

from pydantic import BaseModel, ConfigDict, ValidationError

from recordgen.problems import Place, Problem, Problems, Trouble, quoted, warning
from recordgen.records.receive.incoming import Incoming, IncomingPhoto, IncomingVisit
from recordgen.records.receive.notes_parts import HeadPart, Part, PhotoPart, VisitPart, part_of
from recordgen.sentences import Said, counted, say, spoken_day

FORMAT = 1
LARGEST_FILE_BYTES = 500_000_000
MOST_LINES = 100_000

_BEFORE = b"\xef\xbb\xbf \r\n"
_LINE = re.compile(r"(?P<number>[1-9][0-9]{0,5}) (?P<content>[^\n]+)")
_SUMMED = re.compile(r"(?P<sum>-|[0-9a-f]{64}) (?P<json>.+)", re.DOTALL)
_AGAIN = say("Hand the notes over once more from the phone")


class Head(BaseModel):
    """The first line: the file's id, whose key it is sealed for, the key it brings along, how many lines follow."""

    model_config = ConfigDict(frozen=True)

    field_notes: int
    file: str
    to: str = ""
    key: str = ""
    lines: int


# The content of a line by its number. Raises Trouble where it is not as it was written.
OpenLine = Callable[[int, str], bytes]
# The way to open the lines under a head, whose bytes are bound into every line. Raises Trouble where there is none.
Unseal = Callable[[Head, bytes], OpenLine]


def is_notes(raw: bytes) -> bool:
    """Tell whether some bytes begin as what the field page hands over, in this version or another."""
    return raw.lstrip(_BEFORE).startswith(b'{"field_notes"')


def read_notes(raw: bytes, shown: str, unseal: Unseal) -> Incoming:
    """The visits and photographs in the bytes of a file, and what is wrong with its lines.

    shown: the file's name, for what is told. Raises Trouble where nothing of it can be read.
    """
    first, _, rest = raw.lstrip(_BEFORE).decode("utf-8", "replace").partition("\n")
    head = _head(first.rstrip("\r"), shown)
    open_line = unseal(head, first.rstrip("\r").encode()) if head.key else _check_sum
    notes = _Lines(shown, head, open_line)
    notes.read(rest)
    return notes.incoming()


def file_id(raw: bytes) -> str:
    """The id in the first line of notes; empty where there is none that can be a file's name."""
    try:
        told = json.loads(raw.lstrip(_BEFORE).partition(b"\n")[0])["file"]
    except (ValueError, KeyError, TypeError):
        return ""
    return told if isinstance(told, str) and re.fullmatch("[a-z0-9]{1,40}", told) else ""


def _head(line: str, shown: str) -> Head:
    try:
        head = Head.model_validate_json(line)
    except ValidationError:
        version = re.search(r'"field_notes" ?: ?([0-9]{1,6})[,}]', line)
        if version is None or int(version[1]) == FORMAT:
            raise Trouble(
                say("the first line of {shown} is damaged, so nothing of it can be read", shown=shown), _AGAIN
            ) from None
        head = Head(field_notes=int(version[1]), file="", lines=0)
    if head.field_notes != FORMAT:
        way_out = say("Bring recordgen up to date, then take the file in again")
        raise Trouble(
            say(
                "{shown} is written in version {field_notes} of field notes, which is not known here",
                shown=shown,
                field_notes=head.field_notes,
            ),
            way_out,
        )
    if not 0 <= head.lines <= MOST_LINES:
        raise Trouble(say("the first line of {shown} is damaged, so nothing of it can be read", shown=shown), _AGAIN)
    return head


def _check_sum(number: int, content: str) -> bytes:
    """The content of a line that is not sealed, held against its sum."""
    found = _SUMMED.fullmatch(content)
    if found is None:
        raise Trouble(say("it is not in its form"))
    plain = found["json"].encode()
    if found["sum"] not in ("-", hashlib.sha256(plain).hexdigest()):
        raise Trouble(say("its sum does not fit"))
    return plain


class _Lines:
    """Reads the lines under one head, in whatever order they stand."""

    def __init__(self, shown: str, head: Head, open_line: OpenLine) -> None:
        self.shown = shown
        self.head = head
        self.open_line = open_line
        self.problems = Problems()
        self.whole = True
        self.parts: dict[int, tuple[Part, Place]] = {}
        self.told: set[int] = set()

    def read(self, rest: str) -> None:
        """Read every line; what is wrong with one is kept and stops no other."""
        lines = rest.split("\n")
        is_cut = bool(lines[-1].strip())
        highest = 0
        for at, line in enumerate(lines, 2):
            if not line.strip():
                continue
            place = Place(self.shown, at)
            number = self._line(line.rstrip("\r"), place, is_cut and at == len(lines) + 1)
            if number and number < highest:
                message = say("line {number} of the notes stands behind line {highest}", number=number, highest=highest)
                self.problems.add(
                    warning(place, "notes-order", message, say("Nothing is lost; each line tells its own number"))
                )
            highest = max(highest, number)
        self._missing()

    def _line(self, line: str, place: Place, is_last_and_cut: bool) -> int:
        found = _LINE.fullmatch(line)
        number = int(found["number"]) if found else 0
        try:
            if found is None:
                raise Trouble(say("it is not in its form"))
            part = part_of(self.open_line(number, found["content"]))
        except Trouble as trouble:
            self.told.add(number)
            why = say("the file was cut short in the middle of it") if is_last_and_cut else trouble.message
            self._lost(place, say("this line cannot be taken in: {why}", why=why), trouble.way_out or _AGAIN)
            return number
        if number in self.parts and self.parts[number][0] != part:
            self._lost(
                place, say("line {number} of the notes is there twice, and the two differ", number=number), _AGAIN
            )
        self.parts.setdefault(number, (part, place))
        return number

    def _lost(self, place: Place, message: Said, way_out: Said) -> None:
        self.whole = False
        self.problems.add(Problem(place, "notes-line", message, way_out))

    def _missing(self) -> None:
        gone = sorted(set(range(1, self.head.lines + 1)) - self.parts.keys() - self.told)
        if gone:
            last = max([1, *(place.line for _, place in self.parts.values())])
            at_the_end = gone == list(range(gone[0], self.head.lines + 1))
            message = say("{numbers} missing, of {lines}", numbers=_numbers(gone), lines=self.head.lines)
            message = say("the file was cut short: {what}", what=message) if at_the_end else message
            self._lost(Place(self.shown, last), message, _AGAIN)

    def incoming(self) -> Incoming:
        """Give what was read, each photograph with its visit."""
        parts = [self.parts[number] for number in sorted(self.parts)]
        head = next((part for part, _ in parts if isinstance(part, HeadPart)), HeadPart(kind="head"))
        visits = tuple(self._visit(part, place, parts) for part, place in parts if isinstance(part, VisitPart))
        self._orphans(parts, {visit.id for visit in visits})
        practice = "" if self.head.key else head.practice
        return Incoming(self.head.file, visits, self.problems, head.page, practice, self.whole)

    def _visit(self, part: VisitPart, place: Place, parts: Iterable[tuple[Part, Place]]) -> IncomingVisit:
        photos = tuple(
            IncomingPhoto(one.id, one.foot, one.view, one.moment, one.jpeg, at)
            for one, at in parts
            if isinstance(one, PhotoPart) and one.visit == part.id and self._as_sent(one, at)
        )
        self._missing_photos(part, place, {one.id for one, _ in parts if isinstance(one, PhotoPart)})
        return IncomingVisit(part.id, part.rev, part.horse, part.name, part.date, part.record, place, photos)

    def _missing_photos(self, visit: VisitPart, place: Place, here: set[str]) -> None:
        gone = [one.in_words for one in visit.photos if one.id not in here]
        if gone:
            whose = f"{visit.name or visit.horse}, {spoken_day(visit.date)}"
            self._lost(
                place,
                say(
                    "{photographs} of {whose} did not arrive: {gone}",
                    photographs=counted(len(gone), "photograph"),
                    whose=whose,
                    gone=", ".join(gone),
                ),
                _AGAIN,
            )

    def _as_sent(self, photo: PhotoPart, place: Place) -> bool:
        if not photo.sha256 or hashlib.sha256(photo.jpeg).hexdigest() == photo.sha256:
            return True
        self._lost(place, say("the photograph on this line is not as the phone kept it: its sum does not fit"), _AGAIN)
        return False

    def _orphans(self, parts: Iterable[tuple[Part, Place]], visits: set[str]) -> None:
        for part, place in parts:
            if isinstance(part, PhotoPart) and part.visit not in visits:
                message = say(
                    "this photograph belongs to the visit {visit}, which could not be read", visit=quoted(part.visit)
                )
                self._lost(place, message, _AGAIN)


def _numbers(numbers: list[int]) -> Said:
    """Numbers of lines in words: `line 4 is`, `lines 4 to 9 are`, `6 lines are`."""
    if len(numbers) == 1:
        return say("line {number} is", number=numbers[0])
    if numbers[-1] - numbers[0] == len(numbers) - 1:
        return say("lines {first} to {last} are", first=numbers[0], last=numbers[-1])
    return say("{number} lines are", number=len(numbers))
