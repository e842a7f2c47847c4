"""Pictures that are drawn once for what they show and kept by content, in memory and in a folder."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from collections.abc import Set as AbstractSet
from contextlib import suppress
from dataclasses import fields, is_dataclass
from datetime import date
from functools import cache
from importlib.metadata import version
from pathlib import Path
from typing import ParamSpec

from recordgen.files import write_whole

Arguments = ParamSpec("Arguments")

# A stable has some hundreds of pictures; a process that builds many stables must not hold them all.
MOST_IN_MEMORY = 4096

# Sets a kept file apart from one that was cut short or changed: the hash of the picture before it.
SEAL = "\n<!--{}-->\n"


class PictureCache:
    """Draws a picture the first time it is asked for and hands back the same one ever after.

    Several processes may share one folder. A file that is missing, cut short or unreadable is drawn again, and a folder
    that cannot be written to only costs the time of drawing.
    """

    def __init__(self, folder: Path | None) -> None:
        """Pictures kept in a folder, made when first needed, or only in memory if there is none."""
        self._folder = folder
        self._memory: dict[str, str] = {}

    def drawn(self, draw: Callable[Arguments, str], /, *args: Arguments.args, **kwargs: Arguments.kwargs) -> str:
        """The picture that `draw` makes of these arguments.

        args, kwargs: numbers, words, dates, dataclasses and collections of them.
        Raises TypeError for any other argument, since what it shows could change unseen.
        """
        key = key_of(draw, args, kwargs)
        picture = self._memory.get(key) or self._read(key)
        if picture is None:
            picture = draw(*args, **kwargs)
            self._write(key, picture)
        self._remember(key, picture)
        return picture

    def _remember(self, key: str, picture: str) -> None:
        self._memory[key] = picture
        if len(self._memory) > MOST_IN_MEMORY:
            del self._memory[next(iter(self._memory))]

    def _read(self, key: str) -> str | None:
        if self._folder is None:
            return None
        try:
            return unsealed((self._folder / f"{key}.svg").read_bytes().decode())
        except (OSError, UnicodeDecodeError):
            return None

    def _write(self, key: str, picture: str) -> None:
        if self._folder is not None:
            keep(self._folder / f"{key}.svg", sealed(picture))


def key_of(draw: Callable[..., str], args: tuple[object, ...], kwargs: Mapping[str, object]) -> str:
    """The name a picture is kept under: a hash of who draws it, in which version, and of everything it shows."""
    who = f"{draw.__module__}.{draw.__qualname__}"
    told = "\n".join([who, drawing_version(), canonical(args), canonical(dict(kwargs))])
    return hashlib.sha256(told.encode("utf-8", "surrogatepass")).hexdigest()


def drawing_version() -> str:
    """A hash of the code that draws and of matplotlib's version: when either changes, everything is drawn again."""
    return code_version(Path(__file__).parent, "matplotlib")


@cache
def code_version(folder: Path, *libraries: str) -> str:
    """A hash of the code in a folder and of the versions of the libraries that it draws or reckons with."""
    seen = hashlib.sha256("\0".join(map(version, libraries)).encode())
    for source in sorted(folder.rglob("*.py")):
        seen.update(source.relative_to(folder).as_posix().encode() + b"\0" + source.read_bytes())
    return seen.hexdigest()


def canonical(value: object) -> str:
    """One spelling for a value, the same in every process and for every order of a mapping's keys.

    Raises TypeError for a value that has no such spelling.
    """
    if value is None or isinstance(value, (bool, int, float, str, date)):
        return repr(value)
    if is_dataclass(value) and not isinstance(value, type):
        parts = [f"{field.name}={canonical(getattr(value, field.name))}" for field in fields(value)]
        return f"{type(value).__qualname__}({','.join(parts)})"
    if isinstance(value, Mapping):
        return "{" + ",".join(sorted(f"{canonical(k)}:{canonical(v)}" for k, v in value.items())) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ",".join(canonical(item) for item in value) + "]"
    if isinstance(value, AbstractSet):
        return "<" + ",".join(sorted(canonical(item) for item in value)) + ">"
    raise TypeError(f"a picture cannot be kept by a {type(value).__qualname__}")


def sealed(picture: str) -> str:
    """A picture as it is kept, with the hash that tells whether it is whole."""
    return picture + SEAL.format(hashlib.sha256(picture.encode()).hexdigest())


def unsealed(text: str) -> str | None:
    """The picture that was kept, or None where the text is not what was written."""
    picture = text[: -len(SEAL.format("0" * 64))]
    return picture if picture and sealed(picture) == text else None


def keep(path: Path, content: str | bytes) -> None:
    """Keep a file for the next time; a folder that cannot be written to only costs the time of making it again."""
    with suppress(OSError):
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        write_whole(path, content, mode=0o600, lasting=False)
