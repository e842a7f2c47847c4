"""recordgen schema."""

from __future__ import annotations

from typing import get_args

import click

from recordgen.cli.options import print_json

KINDS = ("practice", "stable", "horse", "visit", "shared")


@click.command("schema")
@click.argument("kind", type=click.Choice(KINDS), default="visit")
def command(kind: str) -> None:
    """Print the JSON Schema of a kind of file, for an editor that completes and checks while you type.

    \b
        recordgen schema visit > visit.schema.json
    """
    from recordgen.records.write.json_schema import FileKind, schema

    print_json(schema(next(one for one in get_args(FileKind) if one == kind)))
