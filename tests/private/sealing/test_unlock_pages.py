"""The readable files of a sealed site: always the same, free of what is sealed, and running only what they carry."""

from __future__ import annotations

import base64
import hashlib
import json
import re

import pytest

from recordgen.packaged import packaged
from recordgen.private.sealing.unlock_pages import LOCK_SCRIPT, base_path, lock_files, reader_files, with_lock
from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference

WORDS = read_reference(None)[0].phrases
SCRIPTS = sorted((packaged() / "site_templates" / "private").glob("*.js"))


def unlock_page(base: str = "/") -> str:
    """The page that asks for the words."""
    return reader_files(base, WORDS)["index.html"].decode()


def source(text: str) -> str:
    """The hash of a script or style as a policy names it."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def test_the_files_are_those_of_a_sealed_site() -> None:
    """Two pages that are one, the worker, and what keeps engines and hosts from meddling."""
    files = reader_files("/", WORDS)

    assert set(files) == {"index.html", "404.html", "sw.js", "robots.txt", ".nojekyll"}
    assert files["index.html"] == files["404.html"]
    assert b"Disallow: /" in files["robots.txt"]


def test_the_files_are_always_the_same() -> None:
    """The same words and base give the same bytes; another base gives others."""
    assert reader_files("/", WORDS) == reader_files("https://stable.example/", dict(reversed(WORDS.items())))
    assert reader_files("/", WORDS)["sw.js"] != reader_files("/yard/", WORDS)["sw.js"]


def test_the_page_runs_only_its_one_script_and_style() -> None:
    """The policy names the hashes of both, and nothing else may run."""
    page = unlock_page()
    [script] = re.findall(r"<script>(.*?)</script>", page, re.DOTALL)
    [style] = re.findall(r"<style>(.*?)</style>", page, re.DOTALL)
    [policy] = re.findall(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)

    assert policy.split("; ")[:3] == [
        "default-src 'none'",
        f"script-src {source(script)}",
        f"style-src {source(style)}",
    ]
    assert "unsafe" not in policy
    assert re.findall(r"\s(?:style|on\w+)=", page) == []


def test_the_policy_stands_before_what_it_is_about() -> None:
    """A policy in a page holds from where it stands."""
    page = unlock_page()

    assert page.index("Content-Security-Policy") < page.index("<style>") < page.index("<script>")


def test_the_page_names_nothing_of_the_site() -> None:
    """A title for any site, and no address but its own."""
    page = unlock_page()

    assert "<title>Private pages</title>" in page
    assert re.findall(r"https?://[^\s\"'<`]+", page) == []


def test_words_cannot_end_the_script_they_stand_in() -> None:
    """A practice's own words may hold any sign."""
    words = WORDS | {"private_unlock_wrong": "</script><b>\u2028", "private_unlock_title": "<i>&"}
    page = reader_files("/", words)["index.html"].decode()

    assert page.count("</script>") == 1
    assert "<h1>&lt;i&gt;&amp;</h1>" in page


@pytest.mark.parametrize(
    ("base", "own_device", "offered"),
    [
        ("/", None, True),
        ("https://a.example", None, True),
        ("/yard/", None, False),
        ("/yard/", True, True),
        ("/", False, False),
    ],
)
def test_a_key_is_kept_only_on_an_origin_of_its_own(base: str, own_device: bool | None, offered: bool) -> None:
    """Below another's root, whoever shares it could use a key that is kept; page and worker agree."""
    files = reader_files(base, WORDS, own_device=own_device)

    assert (b'id="own"' in files["index.html"]) == offered
    assert (b'"ownDevice": true' in files["sw.js"]) == offered


@pytest.mark.parametrize(
    ("base", "path"),
    [
        ("", "/"),
        ("/", "/"),
        ("yard", "/yard/"),
        ("https://a.example/yard/book", "/yard/book/"),
        ("https://a.example", "/"),
    ],
)
def test_a_base_is_a_path_with_strokes_around_it(base: str, path: str) -> None:
    """An address or its path, however it is closed."""
    assert base_path(base) == path


@pytest.mark.parametrize("base", ["/a b/", "/<x>/", '/"/', "/../", "/a/./b/", "/a//b/", "/höf/"])
def test_a_base_that_addresses_cannot_hold_is_refused(base: str) -> None:
    """With a word on what to use."""
    with pytest.raises(Trouble, match="cannot be the address"):
        base_path(base)


def test_the_lock_stands_last_on_a_page() -> None:
    """Before the end of the body, after all that the page brings; nothing else is touched."""
    html = b"<body><script>'</body>'</script><p>x</p></BODY ></html>"

    assert with_lock(html, "/yard/") == html.replace(
        b"</BODY >", b'<script src="/yard/assets/lock.js"></script></BODY >'
    )


def test_a_page_without_an_end_gets_its_lock() -> None:
    """A browser closes what was left open."""
    assert with_lock(b"<p>x", "/") == b'<p>x<script src="/assets/lock.js"></script>'


def test_the_lock_script_is_one_for_all_bases() -> None:
    """It finds its base by its own address."""
    [(path, script)] = lock_files(WORDS).items()

    assert path == LOCK_SCRIPT
    assert b'"base"' not in script
    assert lock_files() == {path: script}


@pytest.mark.parametrize("file", SCRIPTS, ids=lambda file: file.name)
def test_no_script_trusts_text_as_page(file: object) -> None:
    """Nothing is evaluated, and no text becomes HTML but the lock's own drawing."""
    text = file.read_text("utf-8")  # type: ignore[attr-defined]

    assert re.findall(r"\beval\b|new Function|document\.write|insertAdjacentHTML|outerHTML", text) == []
    assert set(re.findall(r"innerHTML = ([\w.]+)", text)) <= {"given.icon"}


def test_each_word_is_asked_for() -> None:
    """A phrase stands in a template or is named in a script; parts of names count where they are put together."""
    folder = packaged() / "site_templates" / "private"
    text = "".join(path.read_text("utf-8") for path in folder.iterdir() if path.suffix in (".js", ".jinja"))
    ours = [key for key in WORDS if re.match(r"private_(unlock|page|lock)_", key)]
    names = {re.sub(r"^(part_)|(_title)$", "", re.sub(r"^private_[a-z]+_", "", key)) for key in ours}

    assert len(ours) > 30
    assert {name for name in names if not re.search(rf"\b{name}\b", text)} == set()


def test_scripts_get_words_as_data() -> None:
    """Data given to a script are one JSON object, so nothing of it can run."""
    [given] = re.findall(r"^const given = (\{.*\});$", reader_files("/", WORDS)["sw.js"].decode(), re.MULTILINE)

    assert set(json.loads(given)) == {
        "base", "holder", "holderHash", "ownDevice", "styleHash", "trouble", "unlock", "words",
    }  # fmt: skip
