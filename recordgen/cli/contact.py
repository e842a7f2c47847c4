"""recordgen contact."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.places import horse_argument
from recordgen.sentences import say


@click.command("contact")
@horse_argument
@records_option
@today_option
@click.option("--owner", metavar="NAME", help="Who owns the horse.")
@click.option("--payer", metavar="NAME", help="Who pays, where it is not the owner.")
@click.option("--phone", help="Telephone number, as dialled.")
@click.option("--email", help="Address.")
@click.option("--drop", type=click.Choice(["owner", "payer"]), help="Take one of them out.")
@dry_run_option
def command(
    which: str,
    records: Path,
    today: dt.date,
    owner: str | None,
    payer: str | None,
    drop: str | None,
    dry_run: bool,
    **reached: str | None,
) -> None:
    """Note who owns a horse or who pays, for your own site alone.

    \b
        recordgen contact willowmere/bramble --owner "Jonah Peake" --phone "07700 900317"
        recordgen contact bramble --payer "Mara Tilling" --email mara@willowmere.example.org
        recordgen contact bramble --drop payer
    """
    if sum(map(bool, (owner, payer, drop))) != 1:
        raise click.UsageError(say("Say one of --owner NAME, --payer NAME and --drop."))
    with exit_on_trouble():
        from recordgen.records.change.contact import drop_contact, name_contact

        if drop:
            planned = drop_contact(records, which, "owner" if drop == "owner" else "payer")
        else:
            known = {key: value for key, value in reached.items() if value}
            planned = name_contact(records, which, "owner" if owner else "payer", owner or payer or "", known)
        carry_out(planned, today, dry_run)
