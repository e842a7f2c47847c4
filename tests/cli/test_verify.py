"""recordgen verify: what is served against what was published, in a folder and from a real server."""

from __future__ import annotations

import functools
import http.server
import shutil
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.support.commands import run
from tests.support.publishing import Desk, amend

pytestmark = pytest.mark.usefixtures("quick_build")


class Host(http.server.SimpleHTTPRequestHandler):
    """A host that gives out a folder, keeps to itself what begins with a dot, and answers one path with an error."""

    broken = ""

    def do_GET(self) -> None:
        """Answer one request."""
        if self.path == self.broken:
            self.send_error(503, "Overloaded")
        elif self.path.rsplit("/", 1)[-1].startswith("."):
            self.send_error(404)
        else:
            super().do_GET()

    def log_message(self, *args: Any) -> None:
        """Say nothing."""


@pytest.fixture
def address(published: Desk) -> Iterator[str]:
    """The address on this machine at which the published folder is served."""
    server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Host, directory=str(published.public)))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}"
    server.shutdown()
    server.server_close()


def blob(desk: Desk) -> Path:
    """One of the published blobs."""
    return min((desk.public / "d").iterdir())


def test_a_folder_as_it_was_published(published: Desk) -> None:
    """All files, and no others."""
    result = published.verify("--folder", published.public)

    assert (result.exit_code, result.output) == (0, "All is as it was published.\n")


def test_what_differs_in_a_folder_is_listed(published: Desk) -> None:
    """Changed, missing, foreign; exit code 1."""
    lost = blob(published)
    lost.unlink()
    (published.public / "manifest.bin").open("ab").write(b"x")
    (published.public / "shell.php").write_text("?")
    result = published.verify("--folder", published.public)

    assert result.exit_code == 1
    assert result.output.splitlines()[:4] == [
        "Differs from what was published: 3 files.",
        f"  missing   d/{lost.name}",
        "  changed   manifest.bin",
        "  foreign   shell.php",
    ]
    assert "recordgen publish willowmere" in result.output
    assert "runs in the browsers" not in result.output


def test_an_address_as_it_was_published(published: Desk, address: str) -> None:
    """With or without the closing stroke; a host may keep to itself what begins with a dot."""
    assert published.verify("--url", address).output == "All is as it was published.\n"
    assert published.verify("--url", f"{address}/").exit_code == 0


def test_a_changed_script_at_an_address_is_told_with_what_it_means(published: Desk, address: str) -> None:
    """The one attack that sealing does not stop: whoever runs the host changes what runs in the browser."""
    (published.public / "sw.js").open("a").write("fetch('https://collect.example.org/')\n")
    blob(published).write_bytes(b"SLD1 something else")
    result = published.verify("--url", address)

    assert result.exit_code == 1
    assert "  changed   sw.js\n" in result.output
    assert f"  changed   d/{blob(published).name}\n" in result.output
    assert "sw.js runs in the browsers of the readers" in result.output


def test_an_older_edition_at_an_address_is_found(published: Desk, address: str) -> None:
    """A host that goes on giving out the edition before."""
    before = published.folder / "before"
    shutil.copytree(published.public, before)
    amend(published)
    assert published.publish("--yes").exit_code == 0
    shutil.rmtree(published.public)
    before.rename(published.public)
    result = published.verify("--url", address)

    assert result.exit_code == 1
    assert "  changed   manifest.bin\n" in result.output
    assert "  missing   d/" in result.output


def test_the_address_of_stable_yaml_is_looked_at_where_none_is_named(published: Desk, address: str) -> None:
    """So that a schedule needs no more than the stable's name."""
    published.say(f"publish: {{address: '{address}/', to: ../public}}\n")

    assert published.verify().output == "All is as it was published.\n"


def test_a_host_with_trouble_is_told(published: Desk, address: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """An answer that is neither the file nor its absence; no answer; no address."""
    monkeypatch.setattr(Host, "broken", "/sw.js")
    told = [published.verify("--url", url) for url in (address, "http://127.0.0.1:9/", "willowmere.example.org")]

    assert [result.exit_code for result in told] == [1, 1, 1]
    assert f"{address}/sw.js answers 503 Overloaded. Look at the host; try again later." in told[0].output
    assert "does not answer: [Errno 111] Connection refused" in told[1].output
    assert "is not the address of a site" in told[2].output


def test_what_was_never_published_cannot_be_compared(new: Desk) -> None:
    """No keys on this computer."""
    result = new.verify("--folder", new.folder)

    assert result.exit_code == 1
    assert "willowmere was not published from this computer yet" in result.output


def test_new_keys_count_from_the_next_publishing_on(published: Desk) -> None:
    """Until then what is served is still what was published."""
    published.readers("--rotate", "--yes")

    assert published.verify("--folder", published.public).output == "All is as it was published.\n"


def test_a_stable_that_is_not_there_is_told(published: Desk) -> None:
    """In a sentence."""
    result = run("verify", "Nowhere Inn", "--folder", published.public, "--records", published.records)

    assert result.exit_code == 1
    assert "There is no stable 'Nowhere Inn'" in result.output


@pytest.mark.parametrize("words", [("willowmere", "--folder", "x", "--url", "y"), ()])
def test_one_place_is_looked_at(words: tuple[str, ...]) -> None:
    """Neither two places nor no stable."""
    assert run("verify", *words).exit_code == 2
