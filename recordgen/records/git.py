"""What git is asked to do with the records: tell what changed, and keep one stable's changes as one entry."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Iterator, Sequence
from pathlib import Path

from recordgen.problems import Trouble, quoted
from recordgen.records.diary import Kind


class GitTrouble(Trouble):
    """Something git could not do: what is wrong and the way out, in words."""


# What git says, in small letters, and what is told instead; the first that fits.
_WORDS = {
    "not a git repository": ("the records are not in a git repository", "Make it one: git init"),
    "dubious ownership": ("the records' folder belongs to somebody else", "Work as the person whose folder it is"),
    "please tell me who you are": (
        "git does not know who you are",
        'Tell it once: git config --global user.name "Your Name", and the same with user.email',
    ),
    "ident name": ("git does not know who you are", 'Tell it once: git config --global user.name "Your Name"'),
    "during a merge": ("a merge is not finished", "Finish it with git commit, or end it with git merge --abort"),
    "partial commit": ("something is not finished in git", "Look with: git status"),
    "unmerged": ("a merge is not finished", "Settle the files that git status names, then git commit"),
    "index.lock": ("git is busy in another window", "Wait until it is done, then try again"),
    "failed to sign": ("git could not sign the entry", "Set up signing, or end it: git config commit.gpgsign false"),
    "nothing to commit": ("nothing has changed", "Save the files first"),
    "nothing added to commit": ("nothing has changed", "Save the files first"),
    "did not match any file": ("a file that was to be kept is not there", "Save the files first, then try again"),
}

# Where a repository keeps what git runs before an entry, as `init` lays it out.
HOOKS = ".githooks"
# Tells that hook that the records of an entry were looked through already.
CHECKED = "RECORDGEN_CHECKED"

# Set while git runs a hook; they would point git at another repository.
_NOT_PASSED_ON = ("GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX")


def kinds_of_change(records: Path) -> dict[Path, Kind]:
    """What happened to each file under `records` since the last entry, in the order of the paths.

    A renamed file counts as taken out under its old name and added under the new one. Raises GitTrouble.
    """
    inside = _git(records, "rev-parse", "--show-prefix").rstrip("\n")
    told = _git(records, "status", "--porcelain=v1", "-z", "--untracked-files=all", "--", ".")
    found = {records / name.removeprefix(inside): kind for name, kind in _entries(told) if name.startswith(inside)}
    return dict(sorted(found.items()))


def _entries(told: str) -> Iterator[tuple[str, Kind]]:
    parts = iter(told.split("\0"))
    for part in parts:
        if not part:
            continue
        states, name = part[:2], part[3:]
        if states[0] in "RC":
            old = next(parts)
            if states[0] == "R":
                yield old, "taken out"
        yield name, _kind(states)


def _kind(states: str) -> Kind:
    if "D" in states:
        return "taken out"
    return "added" if states == "??" or states[0] in "ARC" else "amended"


def commit_stable(records: Path, stable_slug: str, paths: Sequence[Path], says: str) -> None:
    """One entry of just these files of one stable; whatever else is staged stays as it is.

    paths: under the stable's folder, as `kinds_of_change` gives them; a file that is gone is taken out.
    says: the entry's text, as `diary.message` writes it.
    Raises GitTrouble, and ValueError for a path that lies elsewhere.
    """
    stable = records / stable_slug
    elsewhere = [path for path in paths if not path.is_relative_to(stable)]
    if elsewhere:
        raise ValueError(f"{elsewhere[0]} does not lie in {stable}")
    commit(records, paths, says)


def commit(records: Path, paths: Sequence[Path], says: str) -> None:
    """One entry of just these files; whatever else is staged stays as it is. Raises GitTrouble."""
    if not paths:
        raise GitTrouble(*_WORDS["nothing to commit"])
    names = "\0".join(str(path.relative_to(records)) for path in paths)
    new = "\0".join(str(path.relative_to(records)) for path in paths if os.path.lexists(path))
    from_stdin = ("--pathspec-from-file=-", "--pathspec-file-nul")
    if new:
        _git(records, "add", "--intent-to-add", *from_stdin, given=new)
    _git(records, "commit", "--quiet", "--only", f"--message={says}", *from_stdin, given=names)


def begin(folder: Path, says: str) -> None:
    """A new repository in `folder` with all its files in a first entry. Raises GitTrouble."""
    _git(folder, "init", "--quiet")
    _git(folder, "add", "--all", "--", ".")
    _git(folder, "commit", "--quiet", f"--message={says}")


def look_through_first(folder: Path) -> None:
    """From now on git runs what lies in the repository's own folder of hooks before an entry. Raises GitTrouble."""
    _git(folder, "config", "--local", "core.hooksPath", HOOKS)


def _git(folder: Path, *words: str, given: str = "") -> str:
    kept = {name: value for name, value in os.environ.items() if name not in _NOT_PASSED_ON}
    environment = kept | {"LC_ALL": "C", "GIT_TERMINAL_PROMPT": "0", "GIT_LITERAL_PATHSPECS": "1", "GIT_EDITOR": "true"}
    environment[CHECKED] = "1"
    try:
        done = subprocess.run(
            ["git", "-C", str(folder), *words], input=os.fsencode(given), capture_output=True, env=environment
        )
    except FileNotFoundError:
        raise GitTrouble("git is not on this computer", "Install git, then try again") from None
    if done.returncode:
        raise trouble_told(words[0], os.fsdecode(done.stderr + done.stdout))
    return os.fsdecode(done.stdout)


def trouble_told(asked: str, said: str) -> GitTrouble:
    """What git could not do, in words. asked: the first word of the command; said: what git printed."""
    words = next((words for part, words in _WORDS.items() if part in said.lower()), None)
    if words:
        return GitTrouble(*words)
    lines = [line for line in said.splitlines() if line.strip()]
    first = f": {quoted(lines[0].strip(), 120)}" if lines else ""
    if asked == "commit":
        return GitTrouble(f"the repository refuses the entry{first}", "Do what it asks, then try again")
    return GitTrouble(f"git could not do it{first}", "Look with: git status")
