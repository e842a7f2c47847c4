"""Commands killed at a moment drawn at random, and two at once; `python -m tests.faults` kills as many as are asked."""

from __future__ import annotations

import sys
from concurrent.futures import ThreadPoolExecutor

import pytest

from tests.faults.apart import run_apart
from tests.faults.kills import Kills

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="kills by forking")


@pytest.fixture(scope="module")
def kills(tmp_path_factory: pytest.TempPathFactory) -> Kills:
    """One prepared computer, of which each run gets a copy."""
    return Kills(tmp_path_factory.mktemp("kills"))


@pytest.mark.parametrize("kind", ["build", "photo", "commit", "receive", "backup"])
def test_after_a_kill_nothing_is_lost_and_the_next_run_makes_it_whole(kills: Kills, kind: str) -> None:
    """Every record's bytes are there, the site is the old or the new one, and afterwards all is as without a kill."""
    killed, wrong = kills.faults(kind, seed=5, at_step=True)

    assert killed
    assert wrong == []


def test_of_two_publishings_at_once_one_seals_the_site_and_the_other_waits_or_says_so(kills: Kills) -> None:
    """Readers open what is whole and the new one, no key is lost, and nothing is left beside it."""
    once = kills.goes_on("publish").machine
    machine = kills.before.copied(kills.folder / "twice at once")
    words = machine.words_of("publish")
    with ThreadPoolExecutor(2) as pool:
        ends = list(pool.map(lambda _: run_apart(words, machine.environment)[:2], range(2)))

    assert 0 in {code for code, _ in ends} <= {0, 1}, ends
    assert all(code == 0 or "another window" in said for code, said in ends), ends
    assert machine.published() == once.published()
    assert machine.names() == once.names()


def test_the_judge_notices_what_is_lost_torn_or_left(kills: Kills) -> None:
    """A record taken away, a page of the old site among new ones and a file left beside them each fail."""
    after = kills.goes_on("photo").machine
    machine = kills.before.copied(kills.folder / "harmed")
    (machine.records / "willowmere" / "bramble" / "2026-10-14.yaml").unlink()
    (machine.folder / "sites" / "willowmere" / "index.html").write_text("other")
    (machine.folder / "public" / ".left.part").touch()
    told = " ".join([*kills.torn(machine, after, "photo"), *kills.after_next_run(machine, after, "photo")])

    for what in ("record willowmere/bramble/2026-10-14.yaml", "neither the old nor the new", "left over: public/.left"):
        assert what in told
