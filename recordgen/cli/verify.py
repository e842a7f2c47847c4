"""recordgen verify."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.places import StableName
from recordgen.cli.terminal import echo
from recordgen.sentences import counted, say

if TYPE_CHECKING:
    from recordgen.hoof.naming import Naming
    from recordgen.private.sealing.unseal import Fault

# What a browser runs before anything is opened.
SCRIPTS = {"index.html", "404.html", "sw.js"}


@click.command("verify")
@click.argument("stable", type=StableName())
@records_option
@click.option("--folder", type=click.Path(path_type=Path), help="Look at this folder, such as the one that is served.")
@click.option("--url", metavar="ADDRESS", help="Look at this address; else at the one in the records.")
def command(stable: str, records: Path, folder: Path | None, url: str | None) -> None:
    """Compare what is served with what was published, file by file.

    \b
        recordgen verify willowmere
        recordgen verify willowmere --folder ../public/willowmere
        recordgen verify willowmere --url https://willowmere.example.org/

    Exit code 1 means that something differs. Whoever runs the host can change the page that asks for the words; that
    is found in no other way, so look now and then, best from another network than the host's.
    """
    if folder and url:
        raise click.UsageError(say("Name a folder or an address, not both."))
    with exit_on_trouble():
        from recordgen.private.keystore.readers import naming_of, refuse_unknown
        from recordgen.private.publishing.address import publish_of
        from recordgen.private.publishing.verify import faults_at, faults_in_folder

        refuse_unknown(records, stable)
        naming = naming_of(records)
        if folder:
            found = faults_in_folder(records, stable, folder)
        else:
            found = faults_at(records, stable, url or publish_of(records, stable).address)
    for line in _fault_lines(found, stable, naming):
        echo(line)
    if found:
        raise click.exceptions.Exit(1)


def _fault_lines(found: Sequence[Fault], stable: str, naming: Naming) -> Iterator[str]:
    if not found:
        yield naming.phrase("publish_as_published")
        return
    yield naming.phrase("publish_not_as_published", count=counted(len(found), "file"))
    for fault in found:
        yield f"  {naming.phrase(f'publish_fault_{fault.kind}', file=fault.path)}"
    scripts = sorted(fault.path for fault in found if fault.path in SCRIPTS and fault.kind == "changed")
    if scripts:
        yield naming.phrase("publish_scripts", files=naming.listed(scripts))
    yield naming.phrase("publish_again", slug=stable)
