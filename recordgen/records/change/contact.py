"""Tell who owns a horse, and who pays."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from recordgen.problems import Trouble
from recordgen.records.change.change import Change
from recordgen.records.change.subject import horse_of, plain_name, stable_of
from recordgen.records.yaml.edit import with_value, without_key
from recordgen.sentences import say

Role = Literal["owner", "payer"]
_ROLES = {"owner": say("owner"), "payer": say("payer")}


def name_contact(records: Path, which: str, role: Role, name: str, reached: dict[str, str]) -> Change:
    """A horse's owner, or who pays. reached: phone and email, where they are known. Raises Trouble."""
    horse = horse_of(records, which)
    home = stable_of(records, horse.folder.parent.name)
    contact = {"name": plain_name(name), **reached}
    return Change(
        records,
        f"{home.record.name}: {role} of {horse.record.name} noted",
        (
            say(
                "{role} of {horse}: {contact}",
                horse=horse.record.name,
                role=_ROLES[role],
                contact=", ".join(contact.values()),
            ),
            say("shown on your own site alone"),
        ),
        f"recordgen list --stable {home.slug}",
        files={horse.file: with_value(horse.raw, role, contact, str(horse.file))},
    )


def drop_contact(records: Path, which: str, role: Role) -> Change:
    """A horse's owner or payer is taken out. Raises Trouble where none is noted."""
    horse = horse_of(records, which)
    home = stable_of(records, horse.folder.parent.name)
    if getattr(horse.record, role) is None:
        raise Trouble(
            say("no {role} of {horse} is noted", role=_ROLES[role], horse=horse.record.name),
            say("Nothing is to be done"),
        )
    return Change(
        records,
        f"{home.record.name}: {role} of {horse.record.name} taken out",
        (
            say(
                "the {role} of {horse} is taken out; git keeps what it once took",
                horse=horse.record.name,
                role=_ROLES[role],
            ),
        ),
        "recordgen build",
        files={horse.file: without_key(horse.raw, role, str(horse.file))},
    )
