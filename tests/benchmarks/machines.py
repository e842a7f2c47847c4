"""A practice built on several machines: a worker process each, with a folder of its own, against one build of all."""

from __future__ import annotations

import shutil
import sys
import time
from importlib import import_module
from pathlib import Path
from typing import Any

from recordgen.site.build import build_sites
from tests.benchmarks.measured import Measured
from tests.support.apart import STABLES, build_alone, counted, differing, tangled_practice


def machines(folder: Path) -> tuple[Measured, Measured]:
    """The times of a build here, the first pass included, and of one by two workers of dask.

    Ends the run with 1 where they differ. Raises ImportError without dask.distributed.
    """
    distributed: Any = import_module("distributed")

    records, counts = tangled_practice(folder / "records"), folder / "counts.json"
    start = time.perf_counter()
    build_sites(counted(records, counts), STABLES, folder / "local", 1)
    local = time.perf_counter() - start
    start = time.perf_counter()
    options = {"n_workers": 2, "threads_per_worker": 1, "dashboard_address": None, "silence_logs": 50}
    with distributed.LocalCluster(**options) as cluster, distributed.Client(cluster) as client:
        client.gather([client.submit(build_alone, records, counts, one, folder / f"own {one}") for one in STABLES])
    for one in STABLES:
        shutil.copytree(folder / f"own {one}" / "sites" / one, folder / "merged" / one)
    apart = time.perf_counter() - start
    if found := differing(folder / "local", folder / "merged"):
        sys.exit(f"built by two workers these differ: {', '.join(found)}")
    return Measured(local, 0), Measured(apart, 0)
