"""The field page in engines other than Chromium's, where this machine has one; Debian carries both."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from tests.support.other_engines import MINI_BROWSER, Run, firefox, webkit

TOE = "feet.left_fore.after.toe_length-73"
# Taps one key after the other, each once the page shows it.
TAP = """(async () => {
  const drawn = () => new Promise((then) => setTimeout(then, 20));
  for (const key of %s) {
    const found = () => document.querySelector(`[data-key="${key}"]`);
    for (let tries = 0; tries < 500 && !found(); tries += 1) await drawn();
    found().click();
  }
  for (let tries = 0; tries < 500 && document.body.dataset.offline !== 'yes'; tries += 1) await drawn();
  await drawn();
  const asked = indexedDB.open('recordgen-field');
  asked.onsuccess = () => {
    const all = asked.result.transaction('drafts').objectStore('drafts').getAll();
    all.onsuccess = () => done(all.result.map((one) => one.record));
  };
})();"""


@pytest.mark.skipif(not shutil.which("firefox-esr"), reason="no Firefox on this machine (Debian: firefox-esr)")
def test_a_value_is_entered_and_kept_in_firefox(field_address: str, tmp_path: Path) -> None:
    """Written to the device's store, and the page is there without a signal."""
    with firefox(field_address, tmp_path) as run:
        assert entered(run) == [{"feet": {"left_fore": {"after": {"toe_length": 73}}}}]


@pytest.mark.skipif(
    not (MINI_BROWSER.exists() and shutil.which("WebKitWebDriver") and shutil.which("Xvfb")),
    reason="no WebKit on this machine (Debian: webkit2gtk-driver, xvfb)",
)
def test_a_value_is_entered_and_kept_in_webkit(field_address: str) -> None:
    """The same, in the engine of Safari."""
    with webkit(field_address) as run:
        assert entered(run) == [{"feet": {"left_fore": {"after": {"toe_length": 73}}}}]


def entered(run: Run) -> object:
    """The records that the device keeps, once a toe was entered."""
    return run(TAP % ["horse-willowmere/tansy", "tile-left_fore", TOE])
