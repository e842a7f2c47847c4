"""The screen shown on this machine alone, under an address nobody can guess, until the tracing is written."""

from __future__ import annotations

import http.server
import json
import secrets
import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

MOST_BYTES = 1_000_000
ALONE = "127.0.0.1"
HEADERS = {
    "Cache-Control": "no-store",
    "Referrer-Policy": "no-referrer",
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Cross-Origin-Resource-Policy": "same-origin",
}


@dataclass(frozen=True)
class ShownScreen:
    """A screen that is being shown.

    files: by name in the address, each with its type. take: takes in what the screen sends, and tells the answer and
    whether the screen is done with.
    """

    files: Mapping[str, tuple[str, bytes]]
    take: Callable[[bytes], tuple[Mapping[str, Any], bool]]
    token: str = field(default_factory=lambda: secrets.token_urlsafe(16))


def serve_screen(shown: ShownScreen, port: int, tell: Callable[[str], None]) -> bool:
    """Show a screen until it is done with, or interrupted; whether it was done.

    tell: is called with the address once it can be opened. Raises OSError where the port is taken.
    """
    with _Server((ALONE, port), _handler(shown)) as server:
        tell(f"http://{ALONE}:{server.server_port}/{shown.token}/")
        try:
            server.serve_forever(poll_interval=0.1)
        except KeyboardInterrupt:
            return False
        return True


class _Server(http.server.ThreadingHTTPServer):
    def handle_error(self, request: object, address: object) -> None:
        """Say nothing of a browser that went away in the middle of an answer."""


def _name_of(server: object) -> str:
    """The name by which pages of this server ask for it."""
    return f"{ALONE}:{server.server_port}" if isinstance(server, http.server.HTTPServer) else ""


def _handler(shown: ShownScreen) -> type[http.server.BaseHTTPRequestHandler]:
    class _Screen(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            name = self._asked_file()
            if name is None or name not in shown.files:
                self._answer(404, "text/plain", b"There is nothing here.")
            else:
                self._answer(200, *shown.files[name])

        def do_POST(self) -> None:
            typed = self.headers.get("Content-Length") or ""
            length = int(typed) if typed.isdecimal() else 0
            plain = self.headers.get("Content-Type") == "application/json"
            if self._asked_file() != "done" or not plain or not 0 < length <= MOST_BYTES or not self._from_here():
                self._answer(404, "text/plain", b"There is nothing here.")
                return
            answer, done = shown.take(self.rfile.read(length))
            self._answer(200, "application/json", json.dumps(answer).encode())
            if done:
                threading.Thread(target=self.server.shutdown, daemon=True).start()

        def _asked_file(self) -> str | None:
            """The file that was asked for; None for whoever does not know the address, or comes by another name."""
            here = self.headers.get("Host") == _name_of(self.server)
            empty, _, rest = self.path.partition("/")
            token, _, name = rest.partition("/")
            known = not empty and secrets.compare_digest(token.encode(), shown.token.encode())
            return name if here and known else None

        def _from_here(self) -> bool:
            """Tell whether a page of this very address sends it."""
            return self.headers.get("Origin") in (None, f"http://{_name_of(self.server)}")

        def _answer(self, code: int, kind: str, content: bytes) -> None:
            self.send_response(code)
            for name, value in {**HEADERS, "Content-Type": kind, "Content-Length": str(len(content))}.items():
                self.send_header(name, value)
            self.end_headers()
            self.wfile.write(content)

        def log_message(self, *args: object) -> None:
            """Say nothing of each request."""

    return _Screen
