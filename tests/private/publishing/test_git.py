"""A sealed site on a branch of a real repository, which is never the records' own."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from recordgen.files import fingerprints
from recordgen.git.remotes import address_of, place, refuse_own
from recordgen.git.troubles import REMOTE, explain_failure
from recordgen.private.publishing import to_git as git_branch
from recordgen.private.publishing.ownership import Ours
from recordgen.private.publishing.to_git import push_branch
from recordgen.problems import Trouble
from recordgen.records.models.stable import Branch
from tests.support.sealed_folders import OURS, sealed_like


def git(folder: Path, *words: str) -> str:
    """The output of git."""
    return subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True, text=True).stdout


@pytest.fixture(autouse=True)
def _somebody(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Git knows who we are, and nothing of this computer's settings but what a test writes."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    monkeypatch.setenv("GIT_CONFIG_GLOBAL", str(tmp_path / "settings"))
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """Records in git, with a remote of their own that holds them."""
    folder = tmp_path / "records"
    folder.mkdir()
    (folder / "practice.yaml").write_text("name: Hazel Hoof Care\n")
    git(tmp_path, "init", "--quiet", "--bare", "kept.git")
    for words in (["init", "--quiet"], ["add", "."], ["commit", "--quiet", "-m", "Bramble seen"]):
        git(folder, *words)
    git(folder, "remote", "add", "home", str(tmp_path / "kept.git"))
    git(folder, "push", "--quiet", "home", "HEAD:refs/heads/main")
    return folder


@pytest.fixture
def remote(tmp_path: Path) -> Path:
    """An empty bare repository for the site."""
    git(tmp_path, "init", "--quiet", "--bare", "public.git")
    return tmp_path / "public.git"


@pytest.fixture
def sealed(tmp_path: Path) -> Path:
    """An edition to push."""
    return sealed_like(tmp_path / "sealed", "one")


def site(remote: Path, branch: str = "site") -> Branch:
    """Where the site goes."""
    return Branch(remote=str(remote), branch=branch)


def on_branch(remote: Path, out: Path, branch: str = "site") -> dict[str, str]:
    """The files of a branch, each as a hash of its bytes."""
    git(out.parent, "clone", "--quiet", "--branch", branch, str(remote), str(out))
    return {name: told for name, told in fingerprints(out).items() if not name.startswith(".git/")}


def test_the_branch_holds_the_site_byte_by_byte(records: Path, remote: Path, sealed: Path, tmp_path: Path) -> None:
    """Also where git is set to change line ends, to ignore files and to sign what is committed."""
    (tmp_path / "ignored").write_text("*.bin\n")
    (tmp_path / "attributes").write_text("* text eol=crlf\n")
    for key, value in (
        ("core.autocrlf", "true"),
        ("commit.gpgSign", "true"),
        ("core.excludesFile", str(tmp_path / "ignored")),
        ("core.attributesFile", str(tmp_path / "attributes")),
    ):
        git(tmp_path, "config", "--file", str(tmp_path / "settings"), key, value)
    assert push_branch(sealed, site(remote), records, OURS)
    (tmp_path / "settings").write_text("")

    assert on_branch(remote, tmp_path / "out") == fingerprints(sealed)


def test_a_new_edition_takes_the_place_of_the_one_before(
    records: Path, remote: Path, sealed: Path, tmp_path: Path
) -> None:
    """The branch has one entry without a past; nobody, no day and no horse stand in it."""
    push_branch(sealed, site(remote), records, OURS)
    newer = sealed_like(tmp_path / "newer", "two")
    push_branch(newer, site(remote), records, OURS)

    told = git(remote, "log", "--format=%an %ae %cn %ce %ad %cd %B", "--date=short", "site").strip()
    assert told == "site site@localhost site site@localhost 2000-01-01 2000-01-01 Site"
    assert on_branch(remote, tmp_path / "out") == fingerprints(newer)


def test_the_same_edition_is_not_pushed_twice(records: Path, remote: Path, sealed: Path) -> None:
    """The commit of the same files is the same commit."""
    push_branch(sealed, site(remote), records, OURS)

    assert push_branch(sealed, site(remote), records, OURS) is False


def test_nothing_is_left_behind_in_the_records(records: Path, remote: Path, sealed: Path) -> None:
    """No branch, no remote, no file."""
    before = (git(records, "for-each-ref"), git(records, "status", "--porcelain"), git(records, "remote"))
    push_branch(sealed, site(remote), records, OURS)

    assert (git(records, "for-each-ref"), git(records, "status", "--porcelain"), git(records, "remote")) == before


@pytest.mark.parametrize(
    "spelled",
    [
        *("{top}/kept.git", "{top}/kept", "{top}/records/../kept.git/", "../kept.git", "file://{top}/kept.git"),
        *("{top}/link", "home", ".", "{top}/records", "{top}/records/.git", "file://{top}/records"),
    ],
)
def test_the_records_own_remote_is_refused(records: Path, sealed: Path, tmp_path: Path, spelled: str) -> None:
    """By address, by path, through a link, by its name, and the repository itself."""
    (tmp_path / "link").symlink_to(tmp_path / "kept.git")
    with pytest.raises(Trouble, match="the records go to that remote"):
        push_branch(sealed, Branch(remote=spelled.format(top=tmp_path)), records, OURS)

    assert git(tmp_path / "kept.git", "for-each-ref", "--format=%(refname)").split() == ["refs/heads/main"]


def test_a_copy_of_the_records_is_refused_under_any_address(records: Path, sealed: Path, tmp_path: Path) -> None:
    """A repository that no remote names, but that holds an entry of the records."""
    git(tmp_path, "clone", "--quiet", "--bare", str(records), "backup.git")
    with pytest.raises(Trouble, match="that remote holds the records"):
        push_branch(sealed, site(tmp_path / "backup.git"), records, OURS)


@pytest.mark.parametrize(
    "other",
    [
        "https://git.example.org/wren/records",
        "https://wren@GIT.example.org:8443/Wren/records.git/",
        "ssh://git@git.example.org:22/wren/records.git",
        "git@git.example.org:wren/records.git",
        "git.example.org:/wren/records",
    ],
)
def test_one_remote_is_known_in_all_its_spellings(records: Path, other: str) -> None:
    """Protocol, user, port, capital letters and ending make no difference. No network is asked."""
    git(records, "remote", "add", "far", "git@git.example.org:wren/records.git")
    with pytest.raises(Trouble, match="the records go to that remote"):
        refuse_own(other, records)
    refuse_own(other.replace("records", "site"), records)


def test_a_remote_behind_an_abbreviation_is_known(records: Path, tmp_path: Path) -> None:
    """Git's own settings may write an address shorter."""
    git(records, "remote", "add", "far", "https://git.example.org/wren/records.git")
    (tmp_path / "settings").write_text('[url "https://git.example.org/"]\n\tinsteadOf = "hub:"\n')
    with pytest.raises(Trouble, match="the records go to that remote"):
        refuse_own("hub:wren/records", records)


def test_records_outside_git_have_no_remote(tmp_path: Path, remote: Path, sealed: Path) -> None:
    """Nothing to compare with, so it is pushed."""
    (tmp_path / "plain").mkdir()

    assert push_branch(sealed, site(remote), tmp_path / "plain", OURS)


def test_folders_are_counted_from_the_records(records: Path, remote: Path, sealed: Path) -> None:
    """A relative path in stable.yaml does not depend on where the command is run."""
    assert address_of("../public.git", records) == str(remote)
    assert push_branch(sealed, Branch(remote="../public.git"), records, OURS)


def test_a_branch_with_anything_else_is_refused(records: Path, remote: Path, sealed: Path, tmp_path: Path) -> None:
    """Somebody's files are named and stay."""
    work = tmp_path / "work"
    git(tmp_path, "clone", "--quiet", str(remote), str(work))
    (work / "shop.html").write_text("mine\n")
    for words in (["checkout", "--quiet", "-b", "site"], ["add", "."], ["commit", "--quiet", "-m", "x"]):
        git(work, *words)
    git(work, "push", "--quiet", "origin", "site")
    with pytest.raises(Trouble, match=r"the branch site holds files that are not of this site: shop\.html"):
        push_branch(sealed, site(remote), records, OURS)

    assert git(remote, "ls-tree", "--name-only", "site").split() == ["shop.html"]


def test_another_stables_branch_is_refused(records: Path, remote: Path, sealed: Path, tmp_path: Path) -> None:
    """One branch for each stable."""
    push_branch(sealed, site(remote), records, OURS)
    other = sealed_like(tmp_path / "other", "other", site="YW5vdGhlci4")
    with pytest.raises(Trouble, match="the sealed site of another stable"):
        push_branch(other, site(remote), records, Ours("YW5vdGhlci4"))


def test_a_push_in_between_is_not_overwritten(
    records: Path, remote: Path, sealed: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Somebody pushes after the branch was looked at: the lease is stale, and theirs stays."""
    push_branch(sealed, site(remote), records, OURS)
    theirs = sealed_like(tmp_path / "theirs", "theirs")
    look_at = git_branch._look_at

    def look_and_be_late(*given: object) -> None:
        monkeypatch.setattr(git_branch, "_look_at", look_at)
        look_at(*given)  # type: ignore[arg-type]
        push_branch(theirs, site(remote), records, OURS)

    monkeypatch.setattr(git_branch, "_look_at", look_and_be_late)
    with pytest.raises(Trouble, match="somebody else wrote the branch meanwhile"):
        push_branch(sealed_like(tmp_path / "mine", "mine"), site(remote), records, OURS)
    assert on_branch(remote, tmp_path / "out") == fingerprints(theirs)


def test_a_remote_that_refuses_is_told_in_its_words(records: Path, remote: Path, sealed: Path, tmp_path: Path) -> None:
    """Its words stand in the message, and the branch stays."""
    push_branch(sealed, site(remote), records, OURS)
    hook = remote / "hooks" / "pre-receive"
    hook.write_text("#!/bin/sh\necho 'Quota of 1 GB used up' >&2\nexit 1\n")
    hook.chmod(0o755)
    with pytest.raises(Trouble, match="the remote refuses the branch: 'Quota of 1 GB used up'") as stopped:
        push_branch(sealed_like(tmp_path / "mine", "mine"), site(remote), records, OURS)

    assert "What is served stays as it was" in stopped.value.way_out
    assert on_branch(remote, tmp_path / "out") == fingerprints(sealed)


def test_a_branch_that_somebody_works_in_is_told(records: Path, sealed: Path, tmp_path: Path) -> None:
    """A repository with a work tree refuses the branch it shows."""
    git(tmp_path, "init", "--quiet", "--initial-branch=site", "work")
    git(tmp_path / "work", "commit", "--quiet", "--allow-empty", "-m", "x")
    with pytest.raises(Trouble, match="somebody works in that branch"):
        push_branch(sealed, site(tmp_path / "work"), records, OURS)


@pytest.mark.parametrize(
    ("remote", "told"),
    [
        ("{top}/nothing.git", "there is no such repository"),
        ("http://127.0.0.1:9/site.git", "the remote does not answer"),
        ("http://nowhere.invalid/site.git", "the remote cannot be found"),
        ("strange://host/site.git", "git does not take an address of that kind"),
    ],
)
def test_a_remote_that_cannot_be_reached_is_told(
    records: Path, sealed: Path, tmp_path: Path, remote: str, told: str
) -> None:
    """Nothing there, nobody answers, no such host, no such protocol."""
    with pytest.raises(Trouble, match=told) as stopped:
        push_branch(sealed, Branch(remote=remote.format(top=tmp_path)), records, OURS)

    assert stopped.value.way_out


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("fatal: write error: No space left on device", "the disk is full, here or at the remote"),
        ("git@h: Permission denied (publickey).\nfatal: Could not read", "the remote does not let git in"),
        ("fatal: could not read Username for 'https://h': terminal prompts disabled", "the remote does not let git in"),
        ("ssh: connect to host h port 22: Connection timed out", "the remote does not answer"),
        ("error: something new\nmore", "git could not do it: 'error: something new'"),
        ("", "git could not do it"),
    ],
)
def test_what_git_says_becomes_a_sentence(said: str, told: str) -> None:
    """Failures that cannot be had in a test are told from git's own words."""
    assert explain_failure("push", said, REMOTE).message == told


def test_a_computer_without_git_is_told(
    records: Path, remote: Path, sealed: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing else can be done then."""
    monkeypatch.setenv("PATH", "")
    with pytest.raises(Trouble, match="git is not on this computer"):
        push_branch(sealed, site(remote), records, OURS)


def test_a_drive_is_no_host() -> None:
    """One letter before the colon is a drive of Windows; a folder has no host."""
    assert place("example.org:site")[0] == "example.org"
    assert place(f"{os.sep}srv{os.sep}site.git") == ("", os.path.realpath("/srv/site"))
