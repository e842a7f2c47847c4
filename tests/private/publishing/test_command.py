"""A sealed site sent by a program of the practice's choice."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pytest

from recordgen.files import fingerprints
from recordgen.private.publishing.to_command import run_command, words_of
from recordgen.problems import Trouble
from tests.support.sealed_folders import sealed_like

PYTHON = f'"{sys.executable}"'


def ran(command: str, folder: Path, records: Path) -> list[str]:
    """The output of a command, line by line."""
    said: list[str] = []
    run_command(command, folder, records, said.append)
    return said


def test_a_program_gets_the_folder_and_its_output_is_shown(tmp_path: Path) -> None:
    """Output and complaints come line by line, whatever their bytes."""
    code = "import sys; print(sys.argv[1]); print('x', file=sys.stderr); sys.stdout.buffer.write(bytes([255]))"
    said = ran(f'{PYTHON} -c "{code}" {{folder}}/', tmp_path, tmp_path)

    assert sorted(said) == sorted([f"{tmp_path}/", "x", "\N{REPLACEMENT CHARACTER}"])


def test_a_program_that_copies_copies_all(tmp_path: Path) -> None:
    """From the records' folder, so that a path in stable.yaml does not depend on where the command is run."""
    sealed = sealed_like(tmp_path / "sealed", "one")
    (tmp_path / "records").mkdir()
    ran("cp -R {folder} ../copied", sealed, tmp_path / "records")

    assert fingerprints(tmp_path / "copied") == fingerprints(sealed)


@pytest.mark.parametrize("signs", ["; touch x", "&& touch x", "$(touch x)", "`touch x`", "| touch x", "> x", "*"])
def test_no_shell_reads_the_command(tmp_path: Path, signs: str) -> None:
    """Signs that a shell would act on arrive as they were typed."""
    code = "import sys, json; print(json.dumps(sys.argv[2:]))"
    said = ran(f"{PYTHON} -c '{code}' {{folder}} {signs}", tmp_path, tmp_path)

    assert json.loads(said[0]) == signs.split()
    assert list(tmp_path.iterdir()) == []


def test_a_folder_with_signs_stays_one_word() -> None:
    """Spaces and quotes in the path are no matter."""
    folder = Path("/tmp/a b'c")

    assert words_of("rsync -a {folder}/ host:site", folder) == ["rsync", "-a", "/tmp/a b'c/", "host:site"]


@pytest.mark.parametrize(
    ("command", "told"),
    [
        (f'{PYTHON} -c "raise SystemExit(23)" {{folder}}', "ended with exit code 23"),
        ("no-such-program-here {folder}", "'no-such-program-here' cannot be run: No such file or directory"),
        ('cp "{folder}', "the command cannot be read: no closing quotation"),
        (" ", "the command is empty"),
    ],
)
def test_a_failure_is_told(tmp_path: Path, command: str, told: str) -> None:
    """With the way out."""
    with pytest.raises(Trouble, match=told) as stopped:
        ran(command, tmp_path, tmp_path)

    assert stopped.value.way_out
