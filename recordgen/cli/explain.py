"""The meaning of a problem's code, for `recordgen check --explain`."""

from __future__ import annotations

from collections.abc import Iterator

import click

from recordgen.cli.language import code_here
from recordgen.cli.terminal import echo
from recordgen.nearest import did_you_mean
from recordgen.problems import quoted
from recordgen.records.models.reference import ProblemWords
from recordgen.sentences import say, sentences


def explain(code: str) -> None:
    """Print what a code means, with an example and its mend. Raises UsageError where there is no such code."""
    from recordgen.records.load.tables import read_reference

    table = read_reference(None, code_here())[0].problems
    words = table.get(code.strip().strip("[]"))
    if words is None:
        way_out = did_you_mean(code, table, say("Look for it at the end of a line of recordgen check"))
        raise click.UsageError(sentences(say("There is no code {code}", code=quoted(code)), way_out))
    for line in _lines(words):
        echo(line)


def _lines(words: ProblemWords) -> Iterator[str]:
    yield words.meaning
    if words.shown:
        yield say("Such as: {example}.", example=words.shown)
    wrong = say("Wrong, in a file of the kind {kind}:", kind=words.file)
    right = say("Right, in a file of the kind {kind}:", kind=words.file)
    for heading, example in ((wrong, words.wrong), (right, words.right)):
        if example:
            yield heading
            yield from (f"  {line}" for line in example.splitlines())
