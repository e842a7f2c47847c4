"""A small invented site and its keys, for the tests of sealing."""

import datetime as dt
from pathlib import Path

from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.seal import SealedSite, seal

DAY = dt.date(2026, 11, 25)
WORDS = "larch amber candle wicket pebble oat"
# Quick for tests; a reader takes no fewer than 600,000.
QUICK = 1000
PAGES = {"index.html": "Willowmere", "horses/bramble.html": "Bramble", "horses/moss.html": "Moss", "404.html": "Lost"}


def page(title: str, words: str = "") -> bytes:
    """A page with a script that stands in it."""
    text = f"<html><head><title>{title}</title></head><body><script>go()</script><p>{words}</p></body></html>"
    return text.encode()


def small_site(folder: Path) -> Path:
    """A built site of four pages, a picture, a style sheet and files that no reader needs."""
    files = {path: page(title, f"Left fore of {title}. " * 40) for path, title in PAGES.items()}
    files |= {"assets/a.css": b"p { color: #123456; }\n" * 30, "assets/foot.png": bytes(range(256)) * 4}
    files |= {"assets/a.css.map": b"{}", "sitemap.xml.gz": b"zipped", "sitemap.xml": b"<urlset/>"}
    for name, content in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content)
    return folder


def new_state(folder: Path) -> SiteKeys:
    """Keys with one way in, which is WORDS."""
    state = SiteKeys.new(folder / "willowmere.keys")
    state.add_words("all readers", WORDS, QUICK)
    return state


def sealed(site: Path, state: SiteKeys, out: Path, today: dt.date = DAY) -> SealedSite:
    """The site sealed for an address."""
    return seal(site, state, "https://example.org/w/", out, today=today)


def contents(folder: Path) -> dict[str, bytes]:
    """The files of a folder by their paths."""
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
