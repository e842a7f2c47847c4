"""The same bytes from many machines: stables built by worker processes, each with a folder of its own."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from recordgen.site.build import build_sites
from tests.support.apart import STABLES, build_alone, counted, differing, tangled_practice

# Each is told of the third, which nobody builds.
BUILT = STABLES[:2]


def test_stables_built_by_two_worker_processes_are_those_of_a_build_of_all(tmp_path: Path) -> None:
    """Each from its own stable's folder and the counts; putting together is copying folders."""
    distributed = pytest.importorskip("distributed")  # takes a second to load
    records, counts = tangled_practice(tmp_path / "records"), tmp_path / "counts.json"
    build_sites(counted(records, counts), BUILT, tmp_path / "local", 1)
    with (
        distributed.LocalCluster(n_workers=2, threads_per_worker=1, dashboard_address=None, silence_logs=50) as cluster,
        distributed.Client(cluster) as client,
    ):
        jobs = [client.submit(build_alone, records, counts, one, tmp_path / f"own {one}") for one in BUILT]
        done = client.gather(jobs)
    for one in BUILT:
        shutil.copytree(tmp_path / f"own {one}" / "sites" / one, tmp_path / "merged" / one)

    assert len({process for process, _ in done}) == 2
    assert [seen for _, seen in done] == [{one} for one in BUILT]
    assert differing(tmp_path / "local", tmp_path / "merged") == []
