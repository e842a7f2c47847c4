"""The measurements, each in a process of its own so that loading and memory count."""

from __future__ import annotations

import os
import re
import resource
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from tests.conftest import TODAY

DAY = ["--today", TODAY.isoformat()]
# Prints the peak memory of the command and of those it started, in kB as Linux tells it.
PEAK = """
import resource, runpy, sys
sys.argv = sys.argv[1:]
try:
    runpy.run_module(sys.argv[0], run_name="__main__", alter_sys=True)
except SystemExit as ended:
    code = ended.code or 0
else:
    code = 0
own, children = (resource.getrusage(who).ru_maxrss for who in (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))
print("PEAK", max(own, children), file=sys.stderr)
sys.exit(code)
"""


LOAD_ALONE = """
import pathlib, sys, yaml
for file in sorted(pathlib.Path(sys.argv[1]).rglob("*.yaml")):
    yaml.load(file.read_bytes(), yaml.CSafeLoader)
"""


@dataclass(frozen=True)
class Measured:
    """Seconds by the clock on the wall, the largest process in MB, and seconds of all cores, children included."""

    seconds: float
    peak_mb: float
    cpu_seconds: float = 0


def _cpu_of_children() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


def _run(
    *words: str, cwd: Path | None = None, cache: Path | None = None, more: Mapping[str, str] | None = None
) -> Measured:
    environment = dict(os.environ) | ({"RECORDGEN_CACHE": str(cache)} if cache else {}) | dict(more or {})
    start, before = time.perf_counter(), _cpu_of_children()
    done = subprocess.run(
        [sys.executable, "-c", PEAK, *words], cwd=cwd, env=environment, capture_output=True, text=True
    )
    seconds, cpu = time.perf_counter() - start, _cpu_of_children() - before
    if done.returncode:
        sys.exit(f"{' '.join(words)}: {done.stdout}{done.stderr}")
    peak = re.search(r"PEAK (\d+)", done.stderr)
    return Measured(seconds, int(peak[1]) / 1024 if peak else 0, cpu)


def check(records: Path, cache: Path) -> Measured:
    """`recordgen check`, whole. cache: a folder; nothing is remembered if it is new."""
    return _run("recordgen", "check", "--records", str(records), *DAY, cache=cache)


def build(records: Path, out: Path, cache: Path, day: date = TODAY) -> Measured:
    """`recordgen build` of all sites as of a day. cache: a folder; all is made if it is new."""
    asked = ("--records", str(records), "--out", str(out), "--today", day.isoformat())
    return _run("recordgen", "build", *asked, cache=cache)


def command(records: Path, cache: Path, *words: str) -> Measured:
    """Any command, whole. cache: a folder, in which its keys lie too."""
    own = {"RECORDGEN_PRIVATE": str(cache.with_name("keys"))}
    given = DAY if "--date" not in words else []
    return _run("recordgen", *words, "--records", str(records), *given, cache=cache, more=own)


def bare_yaml(records: Path) -> Measured:
    """PyYAML's loader in C over the same files, and nothing else."""
    return _timed([sys.executable, "-c", LOAD_ALONE, str(records)])


def bare_engine(sites: Path, folder: Path) -> Measured:
    """`mkdocs build` over pages that hold the finished HTML, one site after the other."""
    found = [bare_site(site, folder / site.name) for site in sorted(sites.iterdir())]
    return Measured(sum(one.seconds for one in found), 0, sum(one.cpu_seconds for one in found))


def bare_site(site: Path, folder: Path) -> Measured:
    """The same for one site."""
    _write_bodies(site, folder / "docs", ".md", "")
    config = "site_name: bare\ntheme: mkdocs\nplugins: [search]\nuse_directory_urls: false\n"
    (folder / "mkdocs.yml").write_text(config)
    return _run("mkdocs", "build", "--quiet", cwd=folder)


def bare_hugo(sites: Path, folder: Path) -> Measured:
    """`hugo` over the same pages of all sites, with a layout that prints their bodies and nothing else."""
    for site in sites.iterdir():
        _write_bodies(site, folder / "content" / site.name, ".html", "---\ntitle: bare\n---\n")
    (folder / "layouts" / "_default").mkdir(parents=True)
    (folder / "layouts" / "_default" / "single.html").write_text("{{ .Content }}\n")
    (folder / "hugo.toml").write_text('baseURL = "/"\ndisableKinds = ["taxonomy", "term", "RSS", "sitemap", "404"]\n')
    return _timed(["hugo", "--quiet", "--logLevel", "error"], folder)


def _timed(words: list[str], cwd: Path | None = None) -> Measured:
    """Another program, whole."""
    start, before = time.perf_counter(), _cpu_of_children()
    subprocess.run(words, cwd=cwd, check=True, capture_output=True)
    return Measured(time.perf_counter() - start, 0, _cpu_of_children() - before)


def _write_bodies(site: Path, folder: Path, ending: str, before: str) -> None:
    """Write the body of each page of a site as a source of another engine's."""
    for page in site.rglob("*.html"):
        article = re.search(r"<article[^>]*>(.*)</article>", page.read_text("utf-8"), re.DOTALL)
        if article and page.name != "404.html":
            target = (folder / page.relative_to(site)).with_suffix(ending)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_text(before + article[1], "utf-8")


def help_time() -> float:
    """Seconds of `recordgen --help`, the median of five."""
    return statistics.median(_run("recordgen", "--help").seconds for _ in range(5))


def picture_times() -> dict[str, float]:
    """Milliseconds a picture takes, by kind: the median of 40, drawn anew each time.

    The frame that the four feet of a horse share, and the bare foot, are drawn once; the frame has a line of its own.
    """
    from recordgen.hoof.context import Context
    from recordgen.hoof.summary import summarise_stable
    from recordgen.pictures.charts.limits import shared_scale, shared_span
    from recordgen.pictures.charts.panel import Frame, drawn_frame
    from recordgen.pictures.charts.through_time import angle_panel, toe_length_panel
    from recordgen.pictures.feet.foot import foot_from_below
    from recordgen.records.load.everything import read_whole
    from recordgen.site.drawings.pictures import readings_of
    from tests.conftest import RECORDS

    whole = read_whole(RECORDS, TODAY, "willowmere")
    ways = Context.of(whole.practice.file, whole.reference, whole.repeated)
    stable = summarise_stable(whole.practice.stables[0], ways, TODAY)
    horse = next(one for one in stable.horses if one.slug == "bramble")
    length, angle = readings_of(horse, "toe_length"), readings_of(horse, "toe_angle")
    span = shared_span(length, horse.events)
    labels = {"outer": "outer", "inner": "inner"}
    frame = Frame(span, shared_scale(length), "mm")
    draws: dict[str, Callable[[], str]] = {
        "frame of four panels": lambda: drawn_frame.__wrapped__(frame),
        "toe length, 17 visits": lambda: toe_length_panel(
            "left_fore", length["left_fore"], horse.events, span, shared_scale(length), "title"
        ),
        "toe angle, 17 visits": lambda: angle_panel(
            "left_fore", angle["left_fore"], horse.events, span, shared_scale(angle), "title"
        ),
        "foot from below": lambda: foot_from_below("left_fore", horse.feet["left_fore"].findings, labels, "title"),
    }
    return {kind: _median_ms(draw) for kind, draw in draws.items()}


def rounds_seconds(stables: int, horses: int) -> float:
    """Seconds to plan the rounds of a practice whose windows are spread over six weeks; the median of five."""
    from datetime import timedelta

    from recordgen.hoof.rounds.rounds import Calendar, Wish, plan_rounds
    from tests.support.horse_records import ways

    wishes = [
        Wish(f"s{stable}", f"h{horse}", f"h{horse}", best - timedelta(days=7), best, best + timedelta(days=7))
        for stable in range(stables)
        for horse in range(horses)
        for best in [TODAY + timedelta(days=8 + (17 * stable + 5 * horse) % 42)]
    ]
    near = {f"s{stable}": [f"s{stable + 1}"] if stable % 3 else [] for stable in range(stables)}
    calendar = Calendar.of(ways(horses_a_day=12), TODAY)
    return _median_ms(lambda: str(plan_rounds(wishes, near, calendar)), 5) / 1000


def coverages() -> dict[int, tuple[float, float]]:
    """By number of cycles: how often the interval of a rate holds the true one, and its mean width, mm a day."""
    from tests.support.simulated_growth import COUNTS, coverage

    return {count: coverage(count, horses=2000, seed=count) for count in COUNTS}


def _median_ms(draw: Callable[[], str], runs: int = 40) -> float:
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        draw()
        times.append(1000 * (time.perf_counter() - start))
    return statistics.median(times)
