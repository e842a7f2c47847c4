"""The codes of problems: each stands in the table and in the source, and each example raises its own."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.problem_examples import CODE, TABLE, codes_in_source, raised

EXAMPLES = [code for code, words in TABLE.items() if words.wrong]


def test_the_table_and_the_source_know_the_same_codes() -> None:
    """No code is without an explanation, and none is explained that nothing raises."""
    assert codes_in_source() == set(TABLE)


def test_a_code_is_plain_words_with_hyphens() -> None:
    """It can be typed and guessed."""
    assert [code for code in TABLE if not CODE.fullmatch(code)] == []


@pytest.mark.parametrize("code", EXAMPLES)
def test_an_example_raises_its_code_and_its_mend_does_not(code: str, tmp_path: Path) -> None:
    """Alone, but for one that the table names beside it; the mended lines raise nothing at all."""
    words = TABLE[code]

    assert raised(tmp_path / "wrong", words, str(words.wrong)) - {words.beside} == {code}
    assert raised(tmp_path / "right", words, str(words.right)) - {words.beside} == set()
