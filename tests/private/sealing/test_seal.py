"""A built site to a sealed folder: the same each time, little changed by little, old blobs kept for a while."""

import datetime as dt
from pathlib import Path

import pytest

from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing import seal as module
from recordgen.private.sealing.seal import SealedPage, seal
from recordgen.private.sealing.sealed_folder import Outlet
from recordgen.private.sealing.site_files import script_hashes
from recordgen.private.sealing.unseal import read_manifest, unseal
from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference
from tests.support.sealed_site import DAY, PAGES, QUICK, WORDS, contents, new_state, page, sealed, small_site

LATER = dt.date(2026, 12, 24)


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A small built site."""
    return small_site(tmp_path / "site")


@pytest.fixture
def state(tmp_path: Path) -> SiteKeys:
    """Keys with one way in."""
    return new_state(tmp_path)


@pytest.fixture
def out(tmp_path: Path) -> Path:
    """Where it is sealed to."""
    return tmp_path / "out"


def blobs(out: Path) -> set[str]:
    """The blobs in a folder."""
    return {name for name in contents(out) if name.startswith("d/")}


def test_the_folder_holds_what_is_told_and_no_more(site: Path, state: SiteKeys, out: Path) -> None:
    """The page that asks for the words, the worker, the keys, the list, and a blob for each file and the lock."""
    done = sealed(site, state, out)
    fixed = {"index.html", "404.html", "sw.js", "keys.json", "manifest.bin", "robots.txt", ".nojekyll"}

    assert contents(out).keys() - blobs(out) == fixed
    assert (len(blobs(out)), done.files) == (8, 8)
    assert done.size == sum(map(len, contents(out).values()))


def test_each_file_comes_back_with_its_lock(site: Path, state: SiteKeys, out: Path) -> None:
    """Pages have one script more; everything else is byte for byte as it was built."""
    sealed(site, state, out)
    opened, built = unseal(out, WORDS, fewest=QUICK), contents(site)

    assert opened.keys() == built.keys() - {"assets/a.css.map", "sitemap.xml.gz"} | {"assets/lock.js"}
    assert [path for path in opened if path in built and opened[path] != built[path]] == sorted(PAGES)
    assert b"/w/assets/lock.js" in opened["index.html"]


def test_two_sealings_are_the_same_to_the_byte(site: Path, state: SiteKeys, out: Path, tmp_path: Path) -> None:
    """In the same folder nothing is written, not even on another day; in a new one the same bytes are."""
    sealed(site, state, out)
    before = contents(out)
    again = sealed(site, state, out, today=LATER)
    sealed(site, state, tmp_path / "new")

    assert (again.written, again.deleted, again.serial) == ({}, (), 1)
    assert contents(out) == before == contents(tmp_path / "new")


def test_one_page_more_writes_one_blob_and_the_list(site: Path, state: SiteKeys, out: Path) -> None:
    """Unchanged files keep their names and their bytes."""
    sealed(site, state, out)
    (site / "horses" / "fennel.html").write_bytes(page("Fennel"))
    done = sealed(site, state, out, today=LATER)

    assert len(done.written) == 2
    assert "manifest.bin" in done.written
    assert (done.new, done.changed, done.removed) == ((SealedPage("horses/fennel.html", "Fennel"),), (), ())
    assert done.serial == 2


def test_what_changed_is_told_by_path_and_title(site: Path, state: SiteKeys, out: Path) -> None:
    """New, changed and removed pages, against the edition before; a style sheet is no page."""
    sealed(site, state, out)
    (site / "index.html").write_bytes(page("Willowmere", "Bramble was seen."))
    (site / "horses" / "moss.html").unlink()
    (site / "assets" / "a.css").write_text("p {}")
    done = sealed(site, state, out)

    assert (done.new, done.changed) == ((), (SealedPage("index.html", "Willowmere"),))
    assert done.removed == (SealedPage("horses/moss.html", "Moss"),)


def test_the_first_edition_is_all_new(site: Path, state: SiteKeys, out: Path) -> None:
    """Every page by its title, in the order of paths."""
    assert [page.title for page in sealed(site, state, out).new] == ["Lost", "Bramble", "Moss", "Willowmere"]


def test_the_list_tells_types_lengths_scripts_and_the_day(site: Path, state: SiteKeys, out: Path) -> None:
    """Everything a browser needs to answer as a server would."""
    sealed(site, state, out)
    manifest = read_manifest(out, state.reader_key)
    length = len(unseal(out, WORDS, fewest=QUICK)["index.html"])

    assert (manifest.serial, manifest.time) == (1, DAY.isoformat())
    assert manifest.files["index.html"][1:] == ("text/html; charset=utf-8", length)
    assert set(manifest.csp) == script_hashes(page("any"))


def test_the_number_grows_with_content_and_with_ways_in(site: Path, state: SiteKeys, out: Path) -> None:
    """And stays where nothing changed."""
    serials = [sealed(site, state, out).serial]
    state.add_words("a rider", iterations=QUICK)
    serials += [sealed(site, state, out).serial, sealed(site, state, out).serial]
    (site / "index.html").write_bytes(page("Willowmere", "new"))
    serials.append(sealed(site, state, out).serial)

    assert serials == [1, 2, 2, 3]


def test_old_blobs_stay_for_one_edition(site: Path, state: SiteKeys, out: Path) -> None:
    """Whoever still holds the list of the edition before finds its files; those before that are gone."""
    editions = []
    for words in ("first", "second", "third"):
        (site / "index.html").write_bytes(page("Willowmere", words))
        done = sealed(site, state, out)
        editions.append(set(state.editions[0]))

    assert blobs(out) == editions[1] | editions[2]
    assert set(done.deleted) == editions[0] - editions[1]


def test_nothing_changed_is_no_new_edition(site: Path, state: SiteKeys, out: Path) -> None:
    """Publishing again does not push out the edition before."""
    sealed(site, state, out)
    (site / "index.html").write_bytes(page("Willowmere", "second"))
    sealed(site, state, out)
    before = blobs(out)
    sealed(site, state, out)

    assert blobs(out) == before


def test_a_rotation_changes_every_blob_and_keeps_none(site: Path, state: SiteKeys, out: Path) -> None:
    """Old words open nothing, new ones everything; no page is told as changed."""
    sealed(site, state, out)
    before = contents(out)
    ((_, words),) = state.rotate(QUICK)
    done = sealed(site, state, out)

    assert not blobs(out) & before.keys()
    assert (done.new, done.changed, done.removed, done.serial) == ((), (), (), 2)
    assert len(unseal(out, words, fewest=QUICK)) == 8
    with pytest.raises(Trouble, match="do not fit"):
        unseal(out, WORDS, fewest=QUICK)


def test_the_list_is_written_last_and_nothing_is_taken_away_before(
    site: Path, state: SiteKeys, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Blobs, then keys, then the pages in clear, then the list: at no moment does it name a file that is missing."""
    order = []
    put, keep_only = Outlet.put, Outlet.keep_only
    monkeypatch.setattr(Outlet, "put", lambda self, *file: (order.append(file[0]), put(self, *file)))
    monkeypatch.setattr(Outlet, "keep_only", lambda self, kept: (order.append("clear"), keep_only(self, kept)))
    sealed(site, state, out)

    assert all(name.startswith("d/") for name in order[:8])
    assert (order[8], order[-2:]) == ("keys.json", ["manifest.bin", "clear"])


def test_a_sealing_cut_short_goes_on_the_next_time(
    site: Path, state: SiteKeys, out: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever was written, the next one gives what it would have given at once."""
    with monkeypatch.context() as broken:
        broken.setattr(module, "reader_files", lambda *_, **__: {"sw.js": None})
        with pytest.raises(TypeError):
            sealed(site, state, out)
    assert blobs(out)
    sealed(site, SiteKeys.read(state.file) if state.file.exists() else state, out)

    assert len(unseal(out, WORDS, fewest=QUICK)) == 8


def test_the_state_is_saved(site: Path, state: SiteKeys, out: Path) -> None:
    """A later run knows what was published."""
    sealed(site, state, out)

    assert SiteKeys.read(state.file) == state


def test_foreign_files_are_refused_before_anything_is_written(site: Path, state: SiteKeys, out: Path) -> None:
    """They are named, and neither folder nor state changes."""
    out.mkdir()
    (out / "CNAME").write_text("example.org")

    with pytest.raises(Trouble, match="CNAME"):
        sealed(site, state, out)
    assert (list(contents(out)), state.file.exists()) == (["CNAME"], False)


def test_a_site_without_a_way_in_is_refused(site: Path, tmp_path: Path, out: Path) -> None:
    """Nobody could read it."""
    with pytest.raises(Trouble, match="no words for this site"):
        sealed(site, SiteKeys.new(tmp_path / "none.json"), out)


def test_a_practices_own_phrases_stand_on_the_page_that_asks(site: Path, state: SiteKeys, out: Path) -> None:
    """Words are the practice's to choose."""
    phrases = read_reference(None)[0].phrases | {"private_unlock_title": "The yard book"}
    seal(site, state, "/w/", out, words=phrases)

    assert "The yard book" in (out / "index.html").read_text()
