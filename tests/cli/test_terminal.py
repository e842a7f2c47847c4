"""Nothing that was typed acts on the terminal."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.support.commands import run_today, small_practice

TURNED = "a nail\u202e or\u200b a stone"
COMMANDS = sorted((ROOT / "recordgen" / "cli").glob("*.py"))


@pytest.fixture(scope="module")
def turned(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A practice in whose free texts the direction of writing is turned."""
    records = small_practice(tmp_path_factory.mktemp("turned"))
    (records / "willowmere/bramble/2026-11-20.yaml").write_text(
        f"date: 2026-11-20\nfeet: {{LF: {{object: {{what: '{TURNED}', where: frog}}}}}}\n"
    )
    return records


@pytest.mark.parametrize("command", [("due",), ("summary", "willowmere/bramble"), ("check",), ("rounds",)])
def test_what_is_printed_shows_as_itself(turned: Path, command: tuple[str, ...]) -> None:
    """A sign that turns the line round is spelled out, or not printed at all."""
    printed = run_today(*command, records=turned).output

    assert printed
    assert "\u202e" not in printed
    assert "\u200b" not in printed


def test_a_hidden_sign_is_spelled_out(turned: Path) -> None:
    """Where the text stands that holds it."""
    printed = run_today("summary", "willowmere/bramble", records=turned).output

    assert "a nail\\u202e or\\u200b a stone" in printed


def test_a_program_gets_what_was_typed(turned: Path) -> None:
    """In JSON the signs are spelled out in ASCII, and read back as they were."""
    printed = run_today("summary", "willowmere/bramble", "--json", records=turned).output

    assert "\u202e" not in printed
    assert TURNED in json.dumps(json.loads(printed), ensure_ascii=False)


@pytest.mark.parametrize("file", COMMANDS, ids=lambda file: file.name)
def test_every_command_prints_by_one_function(file: Path) -> None:
    """The one that spells signs out; bytes for other programs alone go past it."""
    lines = [line.strip() for line in file.read_text("utf-8").splitlines() if "click.echo" in line or "print(" in line]
    own = ("click.echo(click.style(shown", "click.echo(text.encode()", "def _print(", "_print(")

    assert [line for line in lines if not line.startswith(own)] == []


def test_a_name_with_a_hidden_sign_is_refused(tmp_path: Path) -> None:
    """With its line, and the sign spelled out."""
    records = small_practice(tmp_path)
    (records / "willowmere/stable.yaml").write_text(
        'name: "Willow\\u202emere"\nvet: {name: "Dr\\nA", phone: "1\u200b2"}\n'
    )
    lines = run_today("check", records=records).output.splitlines()

    assert [line.split(" error: ")[0] for line in lines[:3]] == [
        "records/willowmere/stable.yaml:1:1:",
        "records/willowmere/stable.yaml:2:7:",
        "records/willowmere/stable.yaml:2:22:",
    ]
    assert "name: a line's end or a sign that does not show stands in 'Willow\\u202emere' (U+202E)" in lines[0]
