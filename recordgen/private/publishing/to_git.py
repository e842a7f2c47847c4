"""A published branch: one commit without a past that holds the site alone, pushed over the one before."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from functools import partial
from pathlib import Path

from recordgen.folders import workroom
from recordgen.git.remotes import address_of, refuse_own, refuse_records
from recordgen.git.run import SEND, run, text
from recordgen.private.publishing.ownership import RING_FILE, Ours
from recordgen.records.models.stable import Branch

# Everybody who reads the branch reads this: neither who published nor when, and nothing of horses.
SAYS = "Site"
_NOBODY = {
    f"GIT_{role}_{what}": value
    for role in ("AUTHOR", "COMMITTER")
    for what, value in (("NAME", "site"), ("EMAIL", "site@localhost"), ("DATE", "2000-01-01T00:00:00Z"))
}
_Git = Callable[..., bytes]


def push_branch(sealed: Path, wanted: Branch, records: Path, ours: Ours) -> bool:
    """Push a folder as the only commit of a branch; False where the branch holds just that already.

    Raises Trouble where the remote is the records' own or holds them, where the branch holds anything else, and where
    git or the remote refuses; the branch stays as it was then.
    """
    remote = address_of(wanted.remote, records)
    refuse_own(remote, records)
    with workroom(Path(tempfile.gettempdir())) as folder:
        git = partial(run, folder, purpose=SEND, more=_NOBODY)
        git("init", "--quiet", "--template=")
        standing = _standing(git, remote)
        refuse_records(sorted(set(standing.values())), records)
        branch = f"refs/heads/{wanted.branch}"
        commit = _commit(git, sealed)
        old = standing.get(branch, "")
        if old == commit:
            return False
        if old:
            _look_at(git, remote, wanted.branch, ours)
        # The lease lets the push through only while the branch stands where it was looked at.
        git("push", "--quiet", f"--force-with-lease={branch}:{old}", "--", remote, f"{commit}:{branch}")
    return True


def _standing(git: _Git, remote: str) -> dict[str, str]:
    """The place where each branch and tag of a remote stands."""
    lines = (line.split("\t", 1) for line in text(git("ls-remote", "--", remote)).splitlines())
    return {name: commit for commit, name in lines}


def _commit(git: _Git, sealed: Path) -> str:
    git(f"--work-tree={sealed.resolve()}", "add", "--all", "--force", "--", ".")
    tree = text(git("write-tree")).strip()
    return text(git("commit-tree", "-m", SAYS, tree)).strip()


def _look_at(git: _Git, remote: str, branch: str, ours: Ours) -> None:
    git("fetch", "--quiet", "--no-tags", "--depth=1", "--", remote, f"refs/heads/{branch}")
    found = [path for path in text(git("ls-tree", "-r", "-z", "--name-only", "FETCH_HEAD")).split("\0") if path]
    ring = git("cat-file", "-p", f"FETCH_HEAD:{RING_FILE}") if RING_FILE in found else None
    ours.look_at(found, ring, f"the branch {branch}")
