"""Readable files on the host of a sealed site: the page that asks for the words, and the worker that opens pages.

The scripts are joined from short parts in `site_templates/private`; each begins with what it is given, as one object.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from functools import cache
from urllib.parse import urlsplit

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from recordgen.packaged import packaged
from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference
from recordgen.sentences import say
from recordgen.site.single_page import policy_hash

LOCK_SCRIPT = "assets/lock.js"

_PAST_THE_WORKER = re.compile(rb'<link rel="apple-touch-icon"[^>]*>\n?')

HOLDER = ("messages.js", "holder.js", "holding.js")
UNLOCK = ("own_window.js", "messages.js", "holder.js", "address.js", "ring.js", "kept.js", "unlock.js")
LOCK = ("messages.js", "holder.js", "holding.js", "address.js", "lock.js")
WORKER = ("messages.js", "kept.js", "sw.js", "frames.js", "edition.js", "answers.js")


def reader_files(
    base: str, words: Mapping[str, str] | None = None, *, own_device: bool | None = None
) -> dict[str, bytes]:
    """The readable files of a sealed site by name, the same for the same arguments.

    base: the address the site is published at, or its path alone. words: the phrases, or ours; those that begin with
    `private_` are used. own_device: whether a reader may stay unlocked for 30 days, which keeps the key on the device;
    left out, only where the site has an origin of its own, since whatever else is on the origin could use that key.
    Raises Trouble for an address that cannot be a base.
    """
    path = base_path(base)
    keeping = path == "/" if own_device is None else own_device
    words = _ours() if words is None else words
    unlock = _unlock_page(path, words, keeping)
    return {
        "index.html": unlock.encode(),
        "404.html": unlock.encode(),
        "sw.js": _worker(path, words, keeping, unlock).encode(),
        "robots.txt": b"User-agent: *\nDisallow: /\n",
        ".nojekyll": b"",
    }


def lock_files(words: Mapping[str, str] | None = None) -> dict[str, bytes]:
    """The files to seal along with a site, by path: the script that `with_lock` asks for.

    words: the phrases, or ours.
    """
    phrases = _ours() if words is None else words
    given = {"words": _words_under(phrases, "private_lock_"), "style": _minify("lock.css"), "icon": _minify("lock.svg")}
    return {LOCK_SCRIPT: _script(given, LOCK).encode()}


def with_lock(html: bytes, base: str) -> bytes:
    """A page of the site with the lock script before the end of its body, or at its end.

    Without its link to a mark that a browser would ask of the host, past the worker.

    base: as for `reader_files`.
    """
    tag = f'<script src="{base_path(base)}{LOCK_SCRIPT}"></script>'.encode()
    html = _PAST_THE_WORKER.sub(b"", html)
    ends = [found.start() for found in re.finditer(rb"</body\s*>", html, re.IGNORECASE)]
    at = ends[-1] if ends else len(html)
    return html[:at] + tag + html[at:]


def base_path(base: str) -> str:
    """The path of a site's address, with a slash at both ends. Raises Trouble for one that addresses cannot hold."""
    path = urlsplit(base).path.strip("/")
    if not re.fullmatch(r"(?:[\w.~-]+(?:/[\w.~-]+)*)?", path, re.ASCII) or {".", ".."} & set(path.split("/")):
        raise Trouble(
            say("'{base}' cannot be the address of a sealed site", base=base),
            say("Use letters, digits, hyphens and slashes"),
        )
    return f"/{path}/" if path else "/"


def _unlock_page(path: str, words: Mapping[str, str], keeping: bool) -> str:
    told = _words_under(words, "private_unlock_")
    style, script = _minify("unlock.css"), _script({"base": path, "words": told}, UNLOCK)
    policy = (
        f"default-src 'none'; script-src {policy_hash(script)}; style-src {policy_hash(style)}; connect-src 'self'; "
        "worker-src 'self'; img-src data:; base-uri 'none'; form-action 'none'"
    )
    shown = {"words": told, "policy": policy, "style": style, "script": script, "own_device": keeping}
    return _page("unlock.html.jinja", shown)


def _worker(path: str, words: Mapping[str, str], keeping: bool, unlock: str) -> str:
    told = _words_under(words, "private_page_")
    style, holder = _minify("unlock.css"), _script({"base": path}, HOLDER)
    trouble = _page("trouble.html.jinja", {"words": told, "base": path, "style": style, "script": holder})
    hashes = {"holderHash": policy_hash(holder), "styleHash": policy_hash(style)}
    pages = {"unlock": unlock, "trouble": trouble, "holder": holder}
    return _script({"base": path, "ownDevice": keeping, "words": told, **hashes, **pages}, WORKER)


def _script(given: Mapping[str, object], parts: tuple[str, ...]) -> str:
    """The parts as one script with a scope of its own. What is given cannot end the script it stands in."""
    told = json.dumps(given, sort_keys=True).replace("<", r"\u003c")
    return "\n".join(['"use strict";', "(() => {", f"const given = {told};", *map(_minify, parts), "})();", ""])


@cache
def _minify(name: str) -> str:
    """The text of a part without its comments, blank lines and indents."""
    text = (packaged() / "site_templates" / "private" / name).read_text("utf-8")
    lines = (line.strip() for line in text.splitlines())
    return "\n".join(line for line in lines if line and not line.startswith("//"))


def _page(template: str, shown: Mapping[str, object]) -> str:
    """A page, its words escaped; style and script stand as they are, since their hashes are in the policy."""
    environment = Environment(
        loader=FileSystemLoader(packaged() / "site_templates" / "private"),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    return environment.get_template(template).render(shown)


@cache
def _ours() -> Mapping[str, str]:
    return read_reference(None)[0].phrases


def _words_under(words: Mapping[str, str], prefix: str) -> dict[str, str]:
    return {key.removeprefix(prefix): text for key, text in words.items() if key.startswith(prefix)}
