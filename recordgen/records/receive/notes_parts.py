"""The content of one line of field notes: the head, a visit, a photograph, the end."""

from __future__ import annotations

import datetime as dt
import json
from typing import Annotated, Any, Literal, NoReturn, TypeAlias

from pydantic import Base64Bytes, BaseModel, ConfigDict, Field, TypeAdapter, ValidationError

from recordgen.problems import Trouble
from recordgen.records.models.fields import Day
from recordgen.sentences import say

# A record goes no deeper than about ten.
DEEPEST = 30

Id = Annotated[str, Field(pattern="^[A-Za-z0-9_-]{1,40}$")]


class _Part(BaseModel):
    model_config = ConfigDict(frozen=True, extra="ignore")


class HeadPart(_Part):
    """The maker of the page, and on which day."""

    kind: Literal["head"]
    practice: str = ""
    page: dt.date | None = None


class PhotoNamed(_Part):
    """A photograph that goes with a visit, as the visit's line names it."""

    id: Id
    foot: Annotated[str, Field(max_length=40)] = ""
    view: Annotated[str, Field(max_length=40)] = ""
    moment: Annotated[str, Field(max_length=40)] = ""

    @property
    def in_words(self) -> str:
        """The foot, the view and the moment in words; the id where none of them is told."""
        return " ".join(filter(None, (self.foot, self.view, self.moment))).replace("_", " ") or self.id


class VisitPart(_Part):
    """A visit: the record under the very keys of a visit's file. photos: those that go with it."""

    kind: Literal["visit"]
    id: Id
    rev: Annotated[int, Field(ge=1, le=1_000_000)]
    horse: Annotated[str, Field(pattern=r"^[a-z0-9-]{1,100}/([a-z0-9-]{1,100}|\?)$")]
    name: Annotated[str, Field(max_length=200)] = ""
    date: Day
    record: dict[str, Any]
    photos: tuple[PhotoNamed, ...] = ()


class PhotoPart(_Part):
    """A photograph of a foot. sha256: of its bytes in hexadecimal; empty where the page could not tell it."""

    kind: Literal["photo"]
    id: Id
    visit: Id
    foot: Annotated[str, Field(max_length=40)]
    view: Annotated[str, Field(max_length=40)]
    moment: Annotated[str, Field(max_length=40)]
    sha256: str = ""
    jpeg: Base64Bytes


class EndPart(_Part):
    """The last line."""

    kind: Literal["end"]


Part: TypeAlias = HeadPart | VisitPart | PhotoPart | EndPart
_PARTS: TypeAdapter[Part] = TypeAdapter(Annotated[Part, Field(discriminator="kind")])
_NAMES = {"head": say("the head"), "visit": say("the visit"), "photo": say("the photograph"), "end": say("the end")}


def part_of(content: bytes) -> Part:
    """The part that the content of a line tells. Raises Trouble where it tells none."""
    try:
        value = json.loads(content, parse_constant=_no_number)
        if _depth(value) > DEEPEST:
            raise Trouble(say("it is nested too deep"))
        return _PARTS.validate_python(_printable(value))
    except ValidationError as wrong:
        raise _not_understood(value, wrong) from None
    except (ValueError, RecursionError):
        raise Trouble(say("it is not in its form")) from None


def _no_number(word: str) -> NoReturn:
    raise ValueError(word)


def _not_understood(value: Any, wrong: ValidationError) -> Trouble:
    kind = value.get("kind") if isinstance(value, dict) else None
    if kind not in _NAMES:
        return Trouble(
            say("it is of a kind that is not known here"),
            say("Bring recordgen up to date, then take the file in again"),
        )
    error = wrong.errors(include_url=False)[0]
    return Trouble(
        say(
            "{part} does not tell its {field} as it should",
            part=_NAMES[kind],
            field=".".join(map(str, error["loc"][1:])),
        )
    )


def _depth(value: Any) -> int:
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return 1 + max(map(_depth, inside), default=0)


def _printable(value: Any) -> Any:
    """The value with half signs, which no file can hold, shown as such."""
    if isinstance(value, dict):
        return {_printable(key): _printable(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return list(map(_printable, value))
    return value.encode("utf-8", "replace").decode() if isinstance(value, str) else value
