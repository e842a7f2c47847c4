"""The codes of problems: where the source raises them, and the examples of the table, run."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from recordgen.hoof.context import Context
from recordgen.hoof.summary import compute_remarks
from recordgen.records.checks.seen import seen_in_vain
from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from recordgen.records.models.reference import ProblemWords
from tests.conftest import ROOT
from tests.support.practice_folders import FILES, TODAY, VISIT_FILE, build

REFERENCE = read_reference(None)[0]
TABLE = REFERENCE.problems
CODE = re.compile("[a-z][a-z0-9]*(-[a-z0-9]+)+")
# The calls that take a code, and which of their arguments it is.
_TAKES = {
    "Problem": 1,
    "warning": 1,
    "tell": 1,
    "note_cell": 0,
    "refuse": 1,
    "problem": 0,
    "refusal": 0,
    "Remark": 2,
    "_remark": 2,
}
_PLACES = {
    "practice": "practice.yaml",
    "stable": "willowmere/stable.yaml",
    "horse": "willowmere/bramble/horse.yaml",
    "visit": VISIT_FILE,
    "shared": "willowmere/bramble/shared.yaml",
    "words": "site_templates/words/own.yaml",
}
# What an example leaves out; the visit has no feet of its own where the example has.
_REST = {
    "practice": FILES["practice.yaml"],
    "stable": "name: Willowmere\n",
    "horse": "name: Bramble\n",
    "visit": "date: 2026-10-14\nfeet: {left_fore: {landing: flat}}\n",
}


def codes_in_source() -> set[str]:
    """Every code that the source gives to a problem."""
    trees = [ast.parse(file.read_text("utf-8")) for file in (ROOT / "recordgen").rglob("*.py")]
    return {code for tree in trees for node in ast.walk(tree) for code in _codes(node)}


def _codes(node: ast.AST) -> Iterator[str]:
    texts: list[ast.AST] = []
    if isinstance(node, ast.Call):
        name = node.func.id if isinstance(node.func, ast.Name) else getattr(node.func, "attr", "")
        at = _TAKES.get(name)
        texts = [node.args[at]] if at is not None and len(node.args) > at else []
    elif isinstance(node, ast.Tuple) and len(node.elts) > 1:
        texts = [one for one in node.elts[:3] if any(map(_is_sentence, node.elts))]
    for text in texts:
        if isinstance(text, ast.Constant) and isinstance(text.value, str) and CODE.fullmatch(text.value):
            yield text.value


def _is_sentence(node: ast.AST) -> bool:
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "say"


def raised(folder: Path, words: ProblemWords, lines: str) -> set[str]:
    """The codes of all that is told of a small practice that holds the lines of an example."""
    whole = f"{_rest(words.file, lines)}{lines}\n"
    records = build(folder, {VISIT_FILE: f"{_REST['visit']}next: {{weeks: 6}}\n", _PLACES[words.file]: whole})
    practice, problems = read_practice(records, TODAY, None, REFERENCE)
    problems.extend(seen_in_vain(problems))
    codes = {problem.code for problem in [*problems, *(read_reference(records)[1] if words.file == "words" else ())]}
    if practice:
        ways = Context.of(practice.file, REFERENCE)
        codes |= {remark.code for horse in practice.horses for remark in compute_remarks(horse, ways, TODAY)}
    return codes


def _rest(file: str, lines: str) -> str:
    """The lines of a right file whose keys the example does not name."""
    rest = [] if lines.startswith("#") else _REST.get(file, "").splitlines()
    return "".join(f"{line}\n" for line in rest if not re.search(f"^{line.split(':')[0]}:", lines, re.MULTILINE))
