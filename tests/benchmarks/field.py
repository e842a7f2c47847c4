"""Run as `python -m tests.benchmarks.field`: contacts, bytes and times of the field page, each beside its aim."""

from __future__ import annotations

import gzip
import statistics
import tempfile
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from tests.conftest import RECORDS, chromium
from tests.support.field import MOST_BYTES, MOST_CONTACTS, field_folder, hosted, opened, phone, usual_visit

ROW = "{:<86} {:>12} {:>12}"
# A phone of the middle price is about so many times slower than a desk computer. Source: the same factor stands for
# "mid-tier mobile" in the throttling that browsers offer to developers.
SLOWER = 4
MOST_SECONDS = 1.0
RUNS = 5
STABLES = tuple(file.parent.name for file in sorted(RECORDS.glob("*/stable.yaml")))
# Opens the first horse and its first foot, sets a value, and tells when the device has it; ms since the page was asked.
FIRST_ENTRY = """async () => {
  const drawn = () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  const press = async (key) => {
    for (let tries = 0; tries < 200 && !document.querySelector(`[data-key="${key}"]`); tries += 1) await drawn();
    document.querySelector(`[data-key="${key}"]`).click();
    await drawn();
  };
  const opened = performance.now();
  for (const key of ['horse-willowmere/tansy', 'tile-left_fore', 'feet.left_fore.after.toe_length-73']) {
    await press(key);
  }
  const toe = (draft) => at(draft.record, ['feet', 'left_fore', 'after', 'toe_length']);
  const all = () => within('readonly', 'drafts', (store) => store.getAll());
  const kept = async () => (await all()).some((one) => toe(one) === 73);
  while (!(await kept())) await drawn();
  return [opened, performance.now()];
}"""


def print_field() -> None:
    """Print counts, bytes and times, each beside its aim; nothing where there is no Chromium."""
    path = chromium()
    if path is None:
        print("the field page: not measured, since there is no Chromium on this machine")
        return
    print(ROW.format("the field page", "found", "aim"))
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        site = field_folder(Path(folder) / "field", STABLES)
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        with hosted(site) as address:
            _counts(browser, address)
            _bytes(site)
            _times(browser, address)
        browser.close()


def _counts(browser: Browser, address: str) -> None:
    context = phone(browser)
    hand = opened(context, address)
    hand.page.evaluate("globalThis.keysTyped = 0; addEventListener('keydown', () => { keysTyped += 1; });")
    usual_visit(hand)
    hand.settled()
    print(ROW.format("a usual visit of four feet: contacts in all", hand.contacts, f"<= {MOST_CONTACTS}"))
    print(ROW.format("  of them scrolls", len(hand.scrolled), ""))
    print(ROW.format("  keys of a keyboard", hand.page.evaluate("keysTyped"), "0"))
    context.close()


def _bytes(site: Path) -> None:
    files = {path.name: path.read_bytes() for path in sorted(site.iterdir()) if not path.name.startswith(".")}
    for name, content in files.items():
        told = f"{name}, bytes ({len(gzip.compress(content, mtime=0)):,} packed)"
        print(ROW.format(told, f"{len(content):,}", f"<= {MOST_BYTES:,}" if name == "index.html" else ""))
    print(ROW.format(f"all {len(files)} files, bytes", f"{sum(map(len, files.values())):,}", ""))


def _times(browser: Browser, address: str) -> None:
    found = [_time(browser, address) for _ in range(RUNS)]
    for at, name in enumerate(("opened the first time", "the first value kept", "opened again without a signal")):
        told = f"{name}, a CPU {SLOWER} times slower, median of {RUNS}: seconds"
        aim = f"<= {MOST_SECONDS:g}" if at != 2 else ""
        print(ROW.format(told, f"{statistics.median(run[at] for run in found) / 1000:.2f}", aim))


def _time(browser: Browser, address: str) -> tuple[float, float, float]:
    context = phone(browser)
    page = context.new_page()
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
    page.goto(address)
    page.wait_for_selector("body[data-ready]")
    ready, kept = page.evaluate(FIRST_ENTRY)
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    context.set_offline(True)
    page.reload()
    page.wait_for_selector("body[data-ready]")
    again = page.evaluate("performance.now()")
    context.close()
    return ready, kept, again


if __name__ == "__main__":
    print_field()
