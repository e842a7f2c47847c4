"""Small changes of the code, made on a few lines of it."""

from __future__ import annotations

import ast
from pathlib import Path

from tests.mutations.changes import changes_of

CODE = """\
LEAST = 3
SHARE = 0.5


def told(a: float, b: float) -> bool:
    return (a + b) * SHARE >= LEAST and a > 0
"""


def test_each_number_sign_comparison_and_joint_is_changed_once(tmp_path: Path) -> None:
    """Where each stands, so that the rest of the line stays."""
    file = tmp_path / "code.py"
    file.write_text(CODE)
    found = {(one.line, one.before, one.after) for one in changes_of(file)}

    assert found == {(1, "3", "4"), (2, "0.5", "0.6"), (6, "0", "1")} | {
        (6, before, after) for before, after in (("+", "-"), ("*", "/"), (">=", "<"), (">", "<="), ("and", "or"))
    }


def test_a_changed_file_is_still_code_and_another_one(tmp_path: Path) -> None:
    """Each change alone, and each different from all others."""
    file = tmp_path / "code.py"
    file.write_text(CODE)
    made = [one.applied(CODE) for one in changes_of(file)]
    trees = {ast.dump(ast.parse(text)) for text in made}

    assert len(trees) == len(made) == 8
    assert ast.dump(ast.parse(CODE)) not in trees
