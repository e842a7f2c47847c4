"""A stable or a horse is begun."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from recordgen.records.change.change import Change
from recordgen.records.change.subject import free_folder, plain_name, stable_of
from recordgen.records.write.templates import render_template
from recordgen.records.yaml.write import scalar
from recordgen.sentences import say


def begin_stable(records: Path, name: str, slug: str | None = None) -> Change:
    """A new stable. slug: its folder, where it is not to be made from the name. Raises Trouble."""
    name = plain_name(name)
    folder = free_folder(records, name, slug)
    file = folder / "stable.yaml"
    text = render_template("stable.yaml.jinja", records, stable_name=name)
    return Change(
        records,
        f"{name}: begun",
        (say("{file}  the stable {name}", file=file, name=name),),
        say('recordgen begin "{stable}/NAME" (its first horse)', stable=folder.name),
        files={file: text.encode()},
    )


def begin_horse(records: Path, stable: str, name: str, told: Mapping[str, str], slug: str | None = None) -> Change:
    """A new horse at a stable. told: what is known of it as typed, by the names of its file. Raises Trouble."""
    home = stable_of(records, stable)
    name = plain_name(name)
    folder = free_folder(home.folder, name, slug)
    file = folder / "horse.yaml"
    known = {key: scalar(" ".join(value.split())) for key, value in told.items() if value.strip()}
    text = render_template("horse.yaml.jinja", records, horse_name=name, told=known)
    return Change(
        records,
        f"{home.record.name}: {name} begun",
        (say("{file}  {horse}, at {stable}", file=file, horse=name, stable=home.record.name),),
        say("recordgen visit {horse} (its first visit)", horse=f"{home.slug}/{folder.name}"),
        files={file: text.encode()},
    )
