"""Browsers with another engine than Chromium's, driven by what they bring along, so that no package stands between."""

from __future__ import annotations

import json
import os
import socket
import subprocess
import time
import urllib.request
from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

# Runs a script in the page, which calls `done` with what comes out.
Run = Callable[[str], Any]

MINI_BROWSER = Path("/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser")
PATIENCE_SECONDS = 30
_DONE = "const done = arguments[arguments.length - 1]; "


@contextmanager
def firefox(address: str, folder: Path) -> Iterator[Run]:
    """A page in Firefox without a window, by Marionette: a length, a colon, and JSON over a socket of this machine."""
    port = _free_port()
    (folder / "user.js").write_text(f'user_pref("marionette.port", {port});\n')
    words = ["firefox-esr", "--headless", "--marionette", "--no-remote", "--profile", str(folder)]
    with _running(words), _connected(port) as line:
        _received(line)
        _asked(line, "WebDriver:NewSession", {"capabilities": {}})
        _asked(line, "WebDriver:Navigate", {"url": address})
        where: dict[str, Any] = {"args": [], "sandbox": None, "newSandbox": False}
        yield lambda script: _asked(line, "WebDriver:ExecuteAsyncScript", {"script": _DONE + script} | where)["value"]
        _asked(line, "Marionette:Quit", {"flags": ["eForceQuit"]})


@contextmanager
def webkit(address: str) -> Iterator[Run]:
    """A page in the small browser of WebKit for GTK on a screen that nobody sees, by its own WebDriver."""
    port, screen = _free_port(), f":{90 + os.getpid() % 900}"
    quiet = {"DISPLAY": screen, "WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1"}
    options = {"binary": str(MINI_BROWSER), "args": ["--automation"]}
    with _running(["Xvfb", screen, "-nolisten", "tcp"]), _running(["WebKitWebDriver", f"--port={port}"], quiet):
        _connected(port).close()
        base = f"http://127.0.0.1:{port}/session"
        made = _posted(base, {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}})
        session = f"{base}/{made['sessionId']}"
        _posted(f"{session}/url", {"url": address})
        yield lambda script: _posted(f"{session}/execute/async", {"script": _DONE + script, "args": []})
        urllib.request.urlopen(urllib.request.Request(session, method="DELETE"), timeout=PATIENCE_SECONDS)


@contextmanager
def _running(words: list[str], more: Mapping[str, str] | None = None) -> Iterator[None]:
    silent = subprocess.DEVNULL
    process = subprocess.Popen(words, env={**os.environ, **(more or {})}, stdout=silent, stderr=silent)
    try:
        yield
    finally:
        process.terminate()
        process.wait(PATIENCE_SECONDS)


def _free_port() -> int:
    with socket.create_server(("127.0.0.1", 0)) as server:
        port: int = server.getsockname()[1]
    return port


def _connected(port: int) -> socket.socket:
    """A line to a program that has begun to listen, or will within some seconds."""
    until = time.monotonic() + PATIENCE_SECONDS
    while True:
        try:
            return socket.create_connection(("127.0.0.1", port), timeout=PATIENCE_SECONDS)
        except OSError:
            if time.monotonic() > until:
                raise
            time.sleep(0.1)


def _received(line: socket.socket) -> Any:
    head = b""
    while not head.endswith(b":"):
        head += line.recv(1)
    left, content = int(head[:-1]), b""
    while len(content) < left:
        content += line.recv(left - len(content))
    return json.loads(content)


def _asked(line: socket.socket, command: str, facts: Mapping[str, Any]) -> Any:
    content = json.dumps([0, 1, command, facts]).encode()
    line.sendall(f"{len(content)}:".encode() + content)
    _, _, error, found = _received(line)
    assert error is None, error
    return found


def _posted(address: str, content: Mapping[str, Any]) -> Any:
    kind = {"Content-Type": "application/json"}
    request = urllib.request.Request(address, json.dumps(content).encode(), kind, method="POST")
    with urllib.request.urlopen(request, timeout=PATIENCE_SECONDS) as answer:
        return json.load(answer)["value"]
