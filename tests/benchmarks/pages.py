"""Run as `python -m tests.benchmarks.pages SITES`: weight and first paint of each kind of page, beside their limits."""

from __future__ import annotations

import statistics
import sys
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from playwright.sync_api import Browser, Page, sync_playwright

from tests.conftest import chromium
from tests.support.field import hosted
from tests.support.kinds import KINDS, MOST_FIRST_BYTES, MOST_INDEX_BYTES, SEARCH_INDEX

ROW = "{:<86} {:>12} {:>12} {:>12}"
# A phone of the middle price on a slow net, as browsers throttle for developers ("Slow 4G", "4x slowdown"): what each
# answer waits, and kB a second. Source: Lighthouse, docs/throttling.md (150 ms and 1.6 Mbps, times 3.75 and 0.9).
SLOWER, WAIT_MS, KBYTES_A_SECOND = 4, 562.5, 180.0
MOST_SECONDS = 1.5
RUNS = 5
# When anything of the page was painted, in ms since it was asked for.
FIRST_PAINT = """() => new Promise((done) => {
  const told = (list) => list.getEntriesByName("first-contentful-paint").forEach((one) => done(one.startTime));
  new PerformanceObserver(told).observe({ type: "paint", buffered: true });
})"""


@dataclass(frozen=True)
class Opened:
    """One opening: seconds to the first paint, and the bytes of the page and of all that it loaded."""

    seconds: float
    page_bytes: int
    all_bytes: int


def print_pages(sites: Path) -> None:
    """Print a row a kind of page of built sites; a sentence where no browser is installed."""
    path = chromium()
    if path is None:
        print("the first paint of the pages is not measured: no Chromium on this machine")
        return
    print(ROW.format("first paint, CPU x4, slow 4G, nothing compressed", "seconds", "page, kB", "all, kB"))
    print(ROW.format("at the most", f"{MOST_SECONDS:g}", "", f"{MOST_FIRST_BYTES / 1000:.0f} + page"))
    with sync_playwright() as playwright, hosted(sites) as address:
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        for kind, page in KINDS.items():
            one = opened(browser, f"{address}{page}")
            print(ROW.format(kind, f"{one.seconds:.2f}", f"{one.page_bytes / 1000:.0f}", f"{one.all_bytes / 1000:.0f}"))
        browser.close()
    for index in sorted(sites.glob(f"*/{SEARCH_INDEX}")):
        told = f"search of {index.parent.parent.name}, kB (at the most {MOST_INDEX_BYTES / 1000:.0f})"
        print(ROW.format(told, "", "", f"{index.stat().st_size / 1000:.0f}"))


def opened(browser: Browser, address: str) -> Opened:
    """The median first paint of a page that this browser never saw, and what it weighs."""
    runs = [_once(browser, address) for _ in range(RUNS)]
    return Opened(statistics.median(one.seconds for one in runs), runs[0].page_bytes, runs[0].all_bytes)


def _once(browser: Browser, address: str) -> Opened:
    context = browser.new_context(viewport={"width": 390, "height": 844})
    page, sizes = context.new_page(), {}
    page.on("response", lambda answer: sizes.update({urlsplit(answer.url).path: answer}))
    _throttle(page)
    page.goto(address, wait_until="load")
    seconds = page.evaluate(FIRST_PAINT) / 1000
    weights = {path: len(answer.body()) for path, answer in list(sizes.items()) if answer.ok}
    context.close()
    return Opened(seconds, weights[urlsplit(address).path], sum(weights.values()))


def _throttle(page: Page) -> None:
    tools = page.context.new_cdp_session(page)
    tools.send("Network.enable")
    net = {"latency": WAIT_MS, "downloadThroughput": KBYTES_A_SECOND * 1000, "uploadThroughput": 84_000}
    tools.send("Network.emulateNetworkConditions", {"offline": False, **net})
    tools.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


if __name__ == "__main__":
    print_pages(Path(sys.argv[1]))
