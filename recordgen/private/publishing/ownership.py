"""Files in a published place: which of its files are this site's, and which are somebody's."""

from __future__ import annotations

import json
import re
from collections.abc import Collection
from dataclasses import dataclass

from recordgen.folders import refuse_strangers
from recordgen.problems import Trouble
from recordgen.sentences import say

RING_FILE = "keys.json"

# What a sealed site consists of.
_SEALED = re.compile(r"(index|404)\.html|sw\.js|keys\.json|manifest\.bin|robots\.txt|\.nojekyll|d/[a-z2-7]{26}\.bin")


@dataclass(frozen=True)
class Ours:
    """The files of a place that may be replaced.

    site: the public id of the stable's sealed site, as its key ring spells it; empty where it has none. published: the
    paths of what was published last.
    """

    site: str = ""
    published: frozenset[str] = frozenset()

    def look_at(self, found: Collection[str], ring: bytes | None, where: str) -> None:
        """Raises Trouble where a place holds somebody's files, with their names, or another stable's site.

        found: the paths of all that lies there. ring: the bytes of its keys.json, None where there is none.
        """
        site = "" if ring is None else _site_of(ring)
        if site and site != self.site:
            message = say("{where} holds the sealed site of another stable, or one whose keys were lost", where=where)
            raise Trouble(message, say("Give each stable a place of its own; one whose keys are lost, empty by hand"))
        foreign = [name for name in found if name not in self.published and not (site and _SEALED.fullmatch(name))]
        refuse_strangers(foreign, where, say("Name an empty place of its own in stable.yaml, or take them away"))


def _site_of(ring: bytes) -> str:
    try:
        site = json.loads(ring).get("site")
    except (ValueError, AttributeError):
        return ""
    return site if isinstance(site, str) else ""
