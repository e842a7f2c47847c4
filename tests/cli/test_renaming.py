"""A stable's or a horse's folder is renamed: keys, words, links and pages go along, and check and publish say how."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import Result

from recordgen.private.keystore.site_keys import SiteKeys
from tests.support.commands import run, run_today
from tests.support.publishing import Desk, git

pytestmark = pytest.mark.usefixtures("quick_build")


def rename(desk: Desk, old: str, new: str, entered: bool = True) -> None:
    """Rename a folder of the records, and keep that in git."""
    git(desk.records, "mv", old, new)
    if entered:
        git(desk.records, "commit", "--quiet", "--message", "renamed")


def publish(desk: Desk, stable: str) -> Result:
    """The output of publishing a stable."""
    return run_today("publish", stable, "--yes", records=desk.records)


def bring(desk: Desk, stable: str = "old-mill", old: str = "willowmere") -> Result:
    """The output of bringing keys along."""
    return run("readers", stable, "--moved-from", old, "--records", desk.records)


def pages(state: SiteKeys) -> set[str]:
    """The addresses of the horses' pages in the last edition."""
    return {path for path in state.pages if path.startswith("horses/") and not path.endswith("_sheet.html")}


@pytest.mark.parametrize("entered", [True, False], ids=["in git", "not kept yet"])
def test_publish_and_check_notice_a_renamed_stable_and_nothing_is_drawn_anew(published: Desk, entered: bool) -> None:
    """Both name the command; no key is made meanwhile."""
    rename(published, "willowmere", "old-mill", entered)
    keys = sorted(path.name for path in published.keys.glob("*.json"))
    told = publish(published, "old-mill")
    checked = run_today("check", records=published.records)

    assert told.exit_code == 1
    assert "The folder old-mill was willowmere before" in told.output
    assert all("recordgen readers old-mill --moved-from willowmere" in one.output for one in (told, checked))
    assert "records/old-mill/stable.yaml:1:1: warning: the folder" in checked.output
    assert ("records/old-mill:1:1: warning: this folder was willowmere before" in checked.output) is not entered
    assert sorted(path.name for path in published.keys.glob("*.json")) == keys


def test_the_command_that_renames_a_stable_names_the_step_for_its_keys(published: Desk) -> None:
    """At once, behind what it did."""
    told = run_today("rename", "willowmere", "Old Mill", records=published.records)

    assert told.exit_code == 0, told.output
    assert "recordgen readers old-mill --moved-from willowmere" in told.output.splitlines()[-1]
    assert bring(published).exit_code == 0


def test_a_renamed_stable_keeps_its_readers_and_its_pages(published: Desk) -> None:
    """The same keys, the same ways in, the same addresses; the served folder is known as its own."""
    before = published.state
    rename(published, "willowmere", "old-mill")
    brought, told = bring(published), publish(published, "old-mill")
    after = SiteKeys.load(published.records, "old-mill")

    assert (brought.exit_code, told.exit_code) == (0, 0), brought.output + told.output
    assert "Its readers keep their words and links" in brought.output
    assert (after.site_id, after.master, after.readers) == (before.site_id, before.master, before.readers)
    assert pages(after) == pages(before)
    assert not list(published.keys.glob("willowmere-*.json"))
    assert run("verify", "old-mill", "--folder", published.public, "--records", published.records).exit_code == 0
    assert "--moved-from" not in run_today("check", records=published.records).output


def test_a_name_that_was_borne_two_names_ago_is_found(published: Desk) -> None:
    """Renamed twice before it is published again."""
    rename(published, "willowmere", "old-mill")
    rename(published, "old-mill", "new-mill")

    assert "recordgen readers new-mill --moved-from willowmere" in publish(published, "new-mill").output


def test_a_renamed_horse_keeps_its_page(published: Desk) -> None:
    """Its address is bookmarked; one that gets its old name later has another."""
    before = pages(published.state)
    rename(published, "willowmere/bramble", "willowmere/bram")
    assert publish(published, "willowmere").exit_code == 0
    assert pages(published.state) == before

    new = published.records / "willowmere" / "bramble"
    new.mkdir()
    (new / "horse.yaml").write_text("name: Another\n")
    assert publish(published, "willowmere").exit_code == 0
    assert pages(published.state) > before
    assert len(pages(published.state)) == 3


def test_new_words_leave_the_pages_where_they_are(published: Desk) -> None:
    """A reader's bookmark of a horse asks for the new words and opens; its page is told as changed."""
    before = pages(published.state)
    assert run("readers", "willowmere", "--rotate", "--yes", "--records", published.records).exit_code == 0
    told = publish(published, "willowmere")

    assert told.exit_code == 0, told.output
    assert pages(published.state) == before
    assert "  changed   Bramble\n" in told.output
    assert before


def test_a_stable_that_was_never_published_is_no_alarm(published: Desk) -> None:
    """Its first publishing makes its keys; the one beside it has nothing to do with it."""
    (published.records / "heath").mkdir()
    stable = (published.records / "willowmere/stable.yaml").read_text().replace("Willowmere", "Heath")
    (published.records / "heath/stable.yaml").write_text(stable.replace("willowmere.", "heath.").replace("public", "p"))
    told = run("readers", "heath", "--records", published.records)

    assert "heath was not published from this computer yet. Publish it: recordgen publish heath" in told.output
    assert publish(published, "heath").exit_code == 0


def test_keys_are_brought_once_and_from_no_stable_that_is_there(published: Desk, tmp_path: Path) -> None:
    """Nobody's keys are taken away or written over."""
    other = published.records / "heath"
    other.mkdir()
    (other / "stable.yaml").write_text("name: Heath\n")
    told = [bring(published, *names) for names in (("heath", "willowmere"), ("heath", "nowhere"), ("heath", "../x"))]

    assert [one.exit_code for one in told] == [1, 1, 1]
    assert "willowmere is a stable still" in told[0].output
    assert "There are no keys of nowhere" in told[1].output
    assert published.state.readers
