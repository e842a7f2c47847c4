"""The server of the tracing screen: for pages of its own address on this machine alone."""

from __future__ import annotations

import http.client
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest

from recordgen.problems import Trouble
from recordgen.site.trace.screen import trace_photo
from tests.support.practice_folders import VISIT
from tests.support.tracing_screen import Served, picture, served, traced_practice

JSON = {"Content-Type": "application/json"}


@pytest.fixture
def shown(tmp_path: Path) -> Iterator[Served]:
    """A screen."""
    with served(tmp_path, traced_practice(tmp_path)) as found:
        yield found


def asked(
    shown: Served, path: str = "", body: bytes | None = None, **headers: str
) -> tuple[int, bytes, http.client.HTTPMessage]:
    """The answer to a request under the screen's address, or under a path from the root."""
    address = urlsplit(shown.address)
    line = http.client.HTTPConnection(str(address.hostname), address.port, timeout=10)
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    line.request(
        "POST" if body is not None else "GET", path if path.startswith("/") else address.path + path, body, named
    )
    answer = line.getresponse()
    return answer.status, answer.read(), answer.headers


def test_the_page_and_its_picture_are_given_out(shown: Served) -> None:
    """Nothing is kept by the browser but what the screen keeps, and no other page shows it."""
    code, page, headers = asked(shown)

    assert (code, b"<canvas" in page, b'id="trace"' in page) == (200, False, True)
    assert (headers["Cache-Control"], headers["X-Frame-Options"]) == ("no-store", "DENY")
    assert asked(shown, "photo.jpg")[1] == picture()


@pytest.mark.parametrize("path", ["/", "/photo.jpg", "/done", "/another/photo.jpg", "//photo.jpg", "/%00/"])
def test_who_does_not_know_the_address_gets_nothing(shown: Served, path: str) -> None:
    """Neither the page nor the picture."""
    assert asked(shown, path)[0] == 404


@pytest.mark.parametrize("path", ["../practice.yaml", "practice.yaml", "photo.jpg/..", "done"])
def test_nothing_else_is_given_out(shown: Served, path: str) -> None:
    """The server knows two names, and no folder."""
    assert asked(shown, path)[0] == 404


def test_a_name_that_was_turned_to_this_machine_gets_nothing(shown: Served) -> None:
    """A page of another site whose name leads here."""
    assert asked(shown, Host="evil.example")[0] == 404


@pytest.mark.parametrize(
    "headers",
    [
        {"Content_Type": "text/plain"},
        {"Content_Type": "application/json", "Origin": "http://evil.example"},
        {"Content_Type": "application/json", "Host": "evil.example"},
    ],
)
def test_another_page_writes_nothing(shown: Served, tmp_path: Path, headers: dict[str, str]) -> None:
    """Not even one that knows the address."""
    assert asked(shown, "done", b'{"landmarks": {}}', **headers)[0] == 404
    assert (tmp_path / "willowmere/bramble/2026-10-14.yaml").read_text() == VISIT


def test_a_wrong_answer_is_answered_and_the_screen_stays(shown: Served) -> None:
    """In words."""
    code, told, _ = asked(shown, "done", b"{}", Content_Type="application/json")

    assert (code, b"the screen sent no tracing" in told) == (200, True)
    assert asked(shown)[0] == 200


def test_a_visit_that_is_gone_meanwhile_is_told(shown: Served, tmp_path: Path) -> None:
    """In words; the points stay on the screen."""
    (tmp_path / "willowmere/bramble/2026-10-14.yaml").unlink()
    sent = b'{"landmarks": {"frog_apex": [[600, 400]]}}'

    assert b"Look whether the visit is still there" in asked(shown, "done", sent, Content_Type="application/json")[1]


def test_a_length_that_is_none_is_refused(shown: Served) -> None:
    """And the screen stays."""
    assert asked(shown, "done", b"{}", Content_Type="application/json", Content_Length="much")[0] == 404
    assert asked(shown)[0] == 200


def test_a_port_that_is_taken_is_told(shown: Served, tmp_path: Path) -> None:
    """With another to try."""
    port = urlsplit(shown.address).port
    photo = next((tmp_path / "willowmere/bramble/photos").iterdir())

    with pytest.raises(Trouble, match=f"port {port} of this machine is taken"):
        trace_photo(tmp_path, photo, None, port or 0, lambda address: None)
