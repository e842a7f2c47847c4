"""A Chromium of this machine; without one the tests are skipped, or fail where it is required."""

from __future__ import annotations

import os
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright

from tests.conftest import chromium
from tests.support import field
from tests.support.sealed_host import Host, Stand, hosted, sealed_small

QUIET = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync",
         # A worker is fetched apart from its page, and without this takes no certificate that a test made.
         "--ignore-certificate-errors"]  # fmt: skip


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A headless Chromium."""
    path = chromium()
    if path is None:
        if os.environ.get("RECORDGEN_BROWSER") == "required":
            pytest.fail("a Chromium is required here; install one, or name it in CHROMIUM")
        pytest.skip("no Chromium on this machine; install one, or name it in CHROMIUM")
    with sync_playwright() as playwright:
        found = playwright.chromium.launch(executable_path=path, args=QUIET)
        yield found
        found.close()


@pytest.fixture(scope="module")
def stand(tmp_path_factory: pytest.TempPathFactory) -> Stand:
    """The small site, sealed for the root of its host."""
    return sealed_small(tmp_path_factory.mktemp("sealed"))


@pytest.fixture
def host(stand: Stand) -> Iterator[Host]:
    """A host of the small site."""
    with hosted(stand) as host:
        yield host


@pytest.fixture(scope="module")
def field_address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    """The field page of one stable, at an address of this machine."""
    with field.hosted(field.field_folder(tmp_path_factory.mktemp("field"))) as found:
        yield found
