"""The version of the program that makes a result: when it changes, the result is made again."""

from __future__ import annotations

import hashlib
import platform
import sysconfig
from functools import cache
from pathlib import Path

import recordgen


@cache
def program_version() -> str:
    """A hash of our code, of Python's version and of the versions of all libraries that are installed beside it.

    All of it, since which part a result comes from cannot be told for sure.
    """
    package = Path(recordgen.__file__).parent
    seen = hashlib.sha256("\0".join((platform.python_version(), *sorted(_libraries()))).encode())
    for source in sorted(package.rglob("*.py")):
        seen.update(source.relative_to(package).as_posix().encode() + b"\0" + source.read_bytes())
    return seen.hexdigest()


def _libraries() -> list[str]:
    """The names of what is installed, each with its version. Source: Python packaging, `.dist-info` folders."""
    places = {sysconfig.get_path("purelib"), sysconfig.get_path("platlib")}
    return [path.name for place in places for path in Path(place).glob("*.dist-info")]
