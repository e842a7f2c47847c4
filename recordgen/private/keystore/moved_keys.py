"""Keys that lie under the name that a stable's folder bore before: found, told, and brought along."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from recordgen.private.keystore.location import has_keys, state_file
from recordgen.private.keystore.lock import alone
from recordgen.problems import Place, Problem, Trouble, quoted, warning
from recordgen.records.history.earlier_names import stables_before
from recordgen.records.load.folders import FIELD, SLUG, Walk
from recordgen.sentences import Said, say


def earlier_name_with_keys(records: Path, slug: str) -> str | None:
    """The earlier name of a stable under which its keys still lie; None where it has keys, or none are left there."""
    without_stable = _names_without_stable(records)
    if not without_stable or state_file(records, slug).exists():
        return None
    return next((old for old in stables_before(records, slug) if old in without_stable), None)


def _names_without_stable(records: Path) -> set[str]:
    """The names under which keys of this practice lie on this computer though no stable's folder bears them."""
    if not has_keys():
        return set()
    file = state_file(records, "any")
    ending = file.name.removeprefix("any")
    names = {one.name.removesuffix(ending) for one in file.parent.glob(f"*{ending}")}
    return {name for name in names - {FIELD} if not (records / name / "stable.yaml").exists()}


def refuse_left_behind(records: Path, slug: str) -> None:
    """Raises Trouble where a stable's keys still lie under an earlier name: new ones would lock its readers out."""
    if old := earlier_name_with_keys(records, slug):
        raise Trouble(_message(slug, old), _way_out(slug, old))


def _message(slug: str, old: str) -> Said:
    return say(
        "the folder {slug} was {old} before, and the keys of its site still lie under that name", slug=slug, old=old
    )


def _way_out(slug: str, old: str) -> Said:
    return say(
        "Bring them along, so that its readers keep their words and links: recordgen readers {slug} --moved-from {old}",
        slug=slug,
        old=old,
    )


def keys_to_bring(records: Path) -> Iterator[Problem]:
    """A warning for each stable whose keys lie under an earlier name, in the order of the folders."""
    walk = Walk(records)
    for file in sorted(records.glob("*/stable.yaml")):
        slug = file.parent.name
        old = earlier_name_with_keys(records, slug) if SLUG.fullmatch(slug) else None
        if old:
            yield warning(Place(walk.shown(file)), "keys-left-behind", _message(slug, old), _way_out(slug, old))


def bring_keys(records: Path, slug: str, old: str) -> None:
    """Give the keys of a stable, and all that is kept about its publishing, the name that its folder bears now.

    Raises Trouble where the old name is a stable's still, has no keys here, or the new one has keys already.
    """
    if not SLUG.fullmatch(old) or FIELD in (slug, old):
        raise Trouble(say("{old} is no name of a stable's folder", old=quoted(old)), say("Name the folder as it was"))
    if (records / old / "stable.yaml").exists():
        raise Trouble(
            say("{old} is a stable still, and its keys are its own", old=old), say("Name the folder that is gone")
        )
    file, new = state_file(records, old), state_file(records, slug)
    if new.exists():
        raise Trouble(say("{slug} has keys of its own already", slug=slug), say("Nothing is to be brought along"))
    if not file.exists():
        raise Trouble(
            say("there are no keys of {old} on this computer", old=old),
            say("Look at the name, or restore your copy of the keys"),
        )
    with alone(file), alone(new):
        # The keys come last: whatever stops this, it can be asked for again.
        for ending in (".plain", ".sealed", file.suffix):
            if file.with_suffix(ending).exists():
                file.with_suffix(ending).rename(new.with_suffix(ending))
