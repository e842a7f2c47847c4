"""Pictures that are drawn once for what they show and kept by content, in memory and in the cache."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from typing import ParamSpec

from recordgen.cache import spelling
from recordgen.cache.entries import Cache
from recordgen.cache.versions import program_version
from recordgen.packaged import packaged

Arguments = ParamSpec("Arguments")

# A stable has some hundreds of pictures; a process that builds many stables must not hold them all.
MOST_IN_MEMORY = 4096
KIND = "pictures"
STYLE = packaged() / "site_templates" / "pictures" / "pictures.mplstyle"


class PictureCache:
    """Draws a picture the first time it is asked for and hands back the same one ever after."""

    def __init__(self, kept: Cache | None) -> None:
        """Pictures kept in a cache, or only in memory if there is none; counts how many are asked for, and drawn."""
        self._kept = kept or Cache(None)
        self._memory: dict[str, str] = {}
        self.asked = self.drawn = 0

    def picture(self, draw: Callable[Arguments, str], /, *args: Arguments.args, **kwargs: Arguments.kwargs) -> str:
        """The picture that `draw` makes of these arguments.

        args, kwargs: numbers, words, dates, dataclasses and collections of them.
        Raises TypeError for any other argument, since what it shows could change unseen.
        """
        key = key_of(draw, args, kwargs)
        picture = self._memory.get(key) or self._stored(key)
        self.asked += 1
        if picture is None:
            self.drawn += 1
            picture = draw(*args, **kwargs)
            self._kept.put(KIND, key, picture.encode())
        self._remember(key, picture)
        return picture

    def _remember(self, key: str, picture: str) -> None:
        self._memory[key] = picture
        if len(self._memory) > MOST_IN_MEMORY:
            del self._memory[next(iter(self._memory))]

    def _stored(self, key: str) -> str | None:
        kept = self._kept.get(KIND, key)
        return None if kept is None else kept.decode()


def key_of(draw: Callable[..., str], args: tuple[object, ...], kwargs: Mapping[str, object]) -> str:
    """The name a picture is kept under: a hash of who draws it, in which version and style, and of all it shows."""
    return spelling.key_of(f"{draw.__module__}.{draw.__qualname__}", program_version() + _style(), args, dict(kwargs))


@cache
def _style() -> str:
    return STYLE.read_text("utf-8")
