"""A practice of any size for benchmarks: plain, realistic visits about every six weeks, and nothing special."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path
from random import Random

from recordgen.records.yaml.write import as_yaml
from tests.demo.days import TODAY, counted_back
from tests.demo.plans import HorsePlan, four_feet
from tests.demo.practice import horse_files, write
from tests.demo.stables import PRACTICE

WORK = ("Roads and woods.", "Schooling.", "Hacks at weekends.", "Out with the herd.")


def generated_practice(folder: Path, stables: int = 5, horses: int = 12, years: int = 2, seed: int = 1) -> int:
    """Write a made-up practice into `folder`, which need not exist, and give the number of its visits.

    horses: how many a stable. years: how far back the visits go from 2026-11-25. The same arguments write the same.
    """
    files = {"practice.yaml": as_yaml(PRACTICE)}
    for stable in range(1, stables + 1):
        files[f"stable-{stable:03}/stable.yaml"] = as_yaml({"name": f"Stable {stable}"})
        for horse in range(1, horses + 1):
            files |= horse_files(_plan(stable, horse, years, seed), str(seed))
    write(folder, files)
    return sum(path.rsplit("/", 1)[-1][0].isdigit() for path in files)


def _plan(stable: int, horse: int, years: int, seed: int) -> HorsePlan:
    rng = Random(f"{seed} {stable} {horse}")
    last = TODAY - timedelta(weeks=rng.randrange(1, 7), days=rng.randrange(3))
    weeks = rng.choices((5, 6, 6, 6, 7, 7, 8), k=5)
    return HorsePlan(
        stable=f"stable-{stable:03}",
        slug=f"horse-{horse:03}",
        file={
            "name": f"Horse {horse}",
            "sex": rng.choice(("mare", "gelding")),
            "born": rng.randrange(1998, 2021),
            "usual_weeks": 6,
        },
        days=counted_back(last, *weeks, since=TODAY.replace(year=TODAY.year - years)),
        feet=four_feet(rng.uniform(77, 87), rng.uniform(33, 38), rng.uniform(48.5, 52)),
        rate=rng.uniform(0.23, 0.28),
        work=WORK,
    )
