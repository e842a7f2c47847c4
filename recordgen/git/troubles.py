"""Messages of git when it cannot do something, told in words, with the way out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from recordgen.problems import Trouble, quoted


class GitTrouble(Trouble):
    """Something git could not do: what is wrong and the way out, in words."""


@dataclass(frozen=True)
class Sayings:
    """Messages of git in small letters, and the words told instead, the first that fits; and a way out for the rest."""

    known: Mapping[str, tuple[str, str]]
    way_out: str


# Where a disk is full git says so in three ways; of a branch it only tells that it could not write.
_FULL = ("no space left", "out of diskspace", "couldn't write")
LOCAL = Sayings(
    {
        **dict.fromkeys(_FULL, ("the disk is full", "Make room, then try again")),
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
        "index.lock": (
            "git is busy in another window, or was killed",
            "Wait until it is done; where nothing runs, delete .git/index.lock in the records",
        ),
        "failed to sign": (
            "git could not sign the entry",
            "Set up signing, or end it: git config commit.gpgsign false",
        ),
        "nothing to commit": ("nothing has changed", "Save the files first"),
        "nothing added to commit": ("nothing has changed", "Save the files first"),
        "did not match any file": (
            "a file that was to be kept is not there",
            "Save the files first, then try again",
        ),
    },
    "Look with: git status",
)

# Messages of OpenSSH about a host's key: another than this computer knows, and none that it knows.
_OTHER_KEY, _NEW_KEY = "remote host identification has changed", "host key verification failed"


def _host_keys(stays: str) -> dict[str, tuple[str, str]]:
    return {
        _OTHER_KEY: (
            "that host shows another key than before",
            f"{stays}; ask whoever runs it whether its key is new, before you go on",
        ),
        _NEW_KEY: (
            "this computer does not know that host yet",
            f"{stays}; reach it once by ssh, compare the key it shows, then try again",
        ),
    }


_STAYS = "What is served stays as it was"
_SIGN_IN = f"{_STAYS}; give git a key or a saved password for it, then publish again"
_SILENT = ("the remote does not answer", f"{_STAYS}; look at the network, then try again")
_LOCKED = ("the remote does not let git in", _SIGN_IN)
REMOTE = Sayings(
    {
        **_host_keys(_STAYS),
        "refusing to update checked out branch": (
            "somebody works in that branch of the remote",
            f"{_STAYS}; name another branch in stable.yaml",
        ),
        "stale info": ("somebody else wrote the branch meanwhile", f"{_STAYS}; look who, then publish again"),
        **dict.fromkeys(_FULL, ("the disk is full, here or at the remote", f"{_STAYS}; make room and publish again")),
        "could not resolve host": (
            "the remote cannot be found: no network, or no such host",
            f"{_STAYS}; try again later",
        ),
        "name or service not known": (
            "the remote cannot be found",
            f"{_STAYS}; look at the network, then try again",
        ),
        "connection refused": _SILENT,
        "timed out": _SILENT,
        "unreachable": _SILENT,
        "no route to host": _SILENT,
        "failed to connect": _SILENT,
        "authentication failed": _LOCKED,
        "could not read username": _LOCKED,
        "could not read password": _LOCKED,
        "permission denied (": _LOCKED,
        "not found": ("there is no such repository", "Look at publish: git: remote in stable.yaml"),
        "does not appear to be a git repository": (
            "there is no such repository",
            "Look at publish: git: remote in stable.yaml; make an empty one with git init --bare",
        ),
        "not a git command": (
            "git does not take an address of that kind",
            "Look at publish: git: remote in stable.yaml",
        ),
    },
    _STAYS,
)

_KEPT = "Nothing was changed"
_QUIET = ("the copy does not answer", f"{_KEPT}; look at the network, or whether the stick is in, then try again")
_SHUT = ("the copy does not let git in", f"{_KEPT}; give git a key or a saved password for it, then try again")
COPY = Sayings(
    {
        **_host_keys(_KEPT),
        **dict.fromkeys(_FULL, ("the disk is full, here or at the copy", f"{_KEPT}; make room, then try again")),
        "read-only file system": ("the copy's disk takes no writing", f"{_KEPT}; unlock the stick, or take another"),
        "could not resolve host": (
            "the copy cannot be found: no network, or no such host",
            f"{_KEPT}; try again later",
        ),
        "name or service not known": ("the copy cannot be found", f"{_KEPT}; look at the network, then try again"),
        **dict.fromkeys(("connection refused", "timed out", "unreachable", "no route to host"), _QUIET),
        "failed to connect": _QUIET,
        **dict.fromkeys(("authentication failed", "could not read username", "could not read password"), _SHUT),
        "permission denied (": _SHUT,
        "permission denied": ("the copy's folder cannot be written", f"{_KEPT}; look whose folder it is"),
        "index.lock": (
            "git is busy in another window, or was killed",
            "Wait until it is done; where nothing runs, delete .git/index.lock in the records",
        ),
        "dubious ownership": ("the copy's folder belongs to somebody else", "Work as the person whose folder it is"),
        "not found": ("there is no such repository", "Look at the address"),
        "does not appear to be a git repository": ("there is no copy of records there", "Look at the address"),
        "please tell me who you are": LOCAL.known["please tell me who you are"],
        "fsck": ("the copy is damaged", f"{_KEPT}; make a new copy at another place: recordgen backup FOLDER"),
        "corrupt": ("the copy is damaged", f"{_KEPT}; make a new copy at another place: recordgen backup FOLDER"),
    },
    _KEPT,
)


def explain_failure(asked: str, said: str, sayings: Sayings = LOCAL) -> GitTrouble:
    """The failure of git, in words of ours where they are known, else in its own.

    asked: the first word of the command. said: what git printed.
    """
    found = next((words for part, words in sayings.known.items() if part in said.lower()), None)
    if found:
        return GitTrouble(*found)
    lines = [line.strip() for line in said.splitlines() if line.strip()]
    if asked == "push" and ("[remote rejected]" in said or "declined" in said):
        reason = next((line for line in lines if line.startswith("remote:")), lines[-1])
        reason = quoted(reason.removeprefix("remote:").strip(), 120)
        return GitTrouble(f"the remote refuses the branch: {reason}", sayings.way_out)
    first = f": {quoted(lines[0], 120)}" if lines else ""
    if asked == "commit":
        return GitTrouble(f"the repository refuses the entry{first}", "Do what it asks, then try again")
    return GitTrouble(f"git could not do it{first}", sayings.way_out)
