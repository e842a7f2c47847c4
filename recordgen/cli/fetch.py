"""recordgen fetch."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say, sentences

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming
    from recordgen.private.backup.fetch import FetchOutcome

_FILE = click.Path(path_type=Path, dir_okay=False)


@click.command("fetch")
@click.argument("address", metavar="FROM", required=False)
@records_option
@click.option("--answers", "answers_file", type=_FILE, help="Read answers here, and write open questions into it.")
def command(address: str | None, records: Path, answers_file: Path | None) -> None:
    """Bring what another computer backed up, and join it with what is here.

    \b
        recordgen fetch
        recordgen fetch /media/stick/my-practice.git

    What one computer changed is taken; where both changed the same reading, you are asked, with both values. Until all
    is answered nothing changes. Where nobody can be asked, the questions go into received/answers.yaml. Afterwards
    recordgen backup gives the other computer yours.
    """
    with exit_on_trouble():
        found, naming = _run_fetch(address, records, answers_file)
        _tell(found, naming, address or "")
    if found.open:
        raise click.exceptions.Exit(1)


def _run_fetch(address: str | None, records: Path, answers_file: Path | None) -> tuple[FetchOutcome, Naming]:
    from recordgen.cli.backup import ask_words
    from recordgen.cli.receive import ask_question
    from recordgen.private.backup.fetch import Asking, fetch
    from recordgen.private.backup.place import copy_address, refuse_shared
    from recordgen.private.keystore.readers import naming_of
    from recordgen.records.load.folders import RECEIVED
    from recordgen.records.receive.questions import Answers, phrases_of
    from recordgen.records.receive.seen import received_folder
    from recordgen.records.receive.whose import Horses

    refuse_shared(records)
    naming = naming_of(records)
    phrase = phrases_of(naming.phrases, "join", naming.language.code)
    file = answers_file or records / RECEIVED / "answers.yaml"
    answers = Answers.read(file, str(file))
    if sys.stdin.isatty():
        answers.ask = lambda question: ask_question(question, phrases_of(naming.phrases, language=naming.language.code))
    asking = Asking(phrase, answers.of, lambda: ask_words(records))
    found = fetch(records, copy_address(address, records), Horses.read(records), asking)
    if found.open:
        if answers_file is None:
            received_folder(records)
        answers.keep(found.open)
        for question in found.open:
            echo(say("{about}: {asks}", about=question.about, asks=sentences(question.asks)))
            for answer, means in question.choices.items():
                echo(f"    {answer}: {means}")
        echo(phrase("answers", file=str(file)))
    return found, naming


def _tell(found: FetchOutcome, naming: Naming, address: str) -> None:
    if not (found.entries or found.keys or found.without_words or found.open):
        echo(naming.phrase("join_nothing", address=address or say("the copy")))
        return
    if found.entries:
        echo(naming.phrase("join_came"))
        for line in found.entries:
            echo(f"    {line}")
    for about in found.joined:
        echo(naming.phrase("join_both", about=about))
    if found.keys:
        names = naming.listed([name.removesuffix(".keys").removesuffix(".pem") for name in found.keys])
        echo(naming.phrase("join_keys", names=names))
    if found.without_words:
        echo(naming.phrase("join_no_words"))
    if found.entries or found.keys:
        echo(naming.phrase("join_next"))
