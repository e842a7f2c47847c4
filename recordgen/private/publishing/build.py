"""A stable's site built to be published: pages under names that tell nothing, and a last page for any depth."""

from __future__ import annotations

import base64
import datetime as dt
import hashlib
import hmac
import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path
from urllib.parse import urlsplit

from recordgen.cache.entries import Cache
from recordgen.records.load.everything import Whole

LETTERS, MORE_LETTERS = 6, 26
# Links of the page for unknown addresses, which begin at the host since that page stands at any depth.
_FROM_HOST = re.compile(r'((?:href|src|data-base)=")/')


def neutral_names(secret: bytes, slugs: Sequence[str]) -> Callable[[str], str]:
    """A name of six small letters and digits for each slug, the same each time, that tells nothing without the secret.

    Where two of them would be the same, all are longer. secret: 32 bytes.
    """
    drawn = {
        slug: base64.b32encode(hmac.digest(secret, slug.encode(), hashlib.sha256)).decode().lower() for slug in slugs
    }
    short = {slug: name[:LETTERS] for slug, name in drawn.items()}
    if len(set(short.values())) < len(short):
        short = {slug: name[:MORE_LETTERS] for slug, name in drawn.items()}
    return short.__getitem__


def build_field_for(whole: Whole, today: dt.date, folder: Path, key: bytes, sealed: bool, cache: Cache) -> None:
    """Build the page for the phone of all stables. key: the practice's public key. sealed: whether it will be."""
    from recordgen.site.field.build import write_field

    folder.mkdir()
    write_field(whole, today, folder, key, sealed, cache=cache)


def build_for(
    address: str, whole: Whole, today: dt.date, page_name: Callable[[str], str], folder: Path, cache: Cache
) -> None:
    """Build the site of the one stable that was read, to be read at an address. Raises Trouble and OSError."""
    from recordgen.site.build_context import BuildContext
    from recordgen.site.engine import write_site
    from recordgen.site.pages.sites import render_site

    context = replace(BuildContext.of(whole, today, cache), page_name=page_name)
    write_site(render_site(context, context.stables[0].slug), folder, context.records)
    lost = folder / "404.html"
    lost.write_text(_FROM_HOST.sub(rf"\g<1>{urlsplit(address).path}", lost.read_text("utf-8")), "utf-8")
