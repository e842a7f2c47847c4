"""Messages of git when it cannot do something, told in words, with the way out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from recordgen.problems import Trouble, quoted
from recordgen.sentences import Said, say


class GitTrouble(Trouble):
    """Something git could not do: what is wrong and the way out, in words."""


@dataclass(frozen=True)
class Sayings:
    """Messages of git in small letters, and the words told instead, the first that fits; and a way out for the rest."""

    known: Mapping[str, tuple[Said, Said]]
    way_out: Said


# The oldest git that knows all that is asked of it: `merge-tree --write-tree`, by which two computers are joined.
# Source: release notes of git 2.38.
OLDEST_GIT = "2.38"
# The answer of any git to a word that it does not know.
_UNKNOWN_WORD = "usage: git "
# Where git may not write it names its lock, as where it is busy, or what it would have added.
_SHUT_OUT = (
    "index.lock': permission denied",
    "index.lock': read-only file system",
    "insufficient permission for adding",
)
# Where a disk is full git says so in three ways; of a branch it only tells that it could not write.
_FULL = ("no space left", "out of diskspace", "couldn't write")
LOCAL = Sayings(
    {
        **dict.fromkeys(_FULL, (say("the disk is full"), say("Make room, then try again"))),
        **dict.fromkeys(_SHUT_OUT, (say("git may not write into the records' folder"), say("Look whose folder it is"))),
        "not a git repository": (say("the records are not in a git repository"), say("Make it one: git init")),
        "dubious ownership": (
            say("the records' folder belongs to somebody else"),
            say("Work as the person whose folder it is"),
        ),
        "please tell me who you are": (
            say("git does not know who you are"),
            say('Tell it once: git config --global user.name "Your Name", and the same with user.email'),
        ),
        "ident name": (
            say("git does not know who you are"),
            say('Tell it once: git config --global user.name "Your Name"'),
        ),
        "during a merge": (
            say("a merge is not finished"),
            say("Finish it with git commit, or end it with git merge --abort"),
        ),
        "partial commit": (say("something is not finished in git"), say("Look with: git status")),
        "unmerged": (say("a merge is not finished"), say("Settle the files that git status names, then git commit")),
        "index.lock": (
            say("git is busy in another window, or was killed"),
            say("Wait until it is done; where nothing runs, delete .git/index.lock in the records"),
        ),
        "failed to sign": (
            say("git could not sign the entry"),
            say("Set up signing, or end it: git config commit.gpgsign false"),
        ),
        "nothing to commit": (say("nothing has changed"), say("Save the files first")),
        "nothing added to commit": (say("nothing has changed"), say("Save the files first")),
        "did not match any file": (
            say("a file that was to be kept is not there"),
            say("Save the files first, then try again"),
        ),
    },
    say("Look with: git status"),
)

# Messages of OpenSSH about a host's key: another than this computer knows, and none that it knows.
_OTHER_KEY, _NEW_KEY = "remote host identification has changed", "host key verification failed"


def _host_keys(stays: Said) -> dict[str, tuple[Said, Said]]:
    return {
        _OTHER_KEY: (
            say("that host shows another key than before"),
            say("{stays}; ask whoever runs it whether its key is new, before you go on", stays=stays),
        ),
        _NEW_KEY: (
            say("this computer does not know that host yet"),
            say("{stays}; reach it once by ssh, compare the key it shows, then try again", stays=stays),
        ),
    }


_STAYS = say("What is served stays as it was")
_SIGN_IN = say("{stays}; give git a key or a saved password for it, then publish again", stays=_STAYS)
_SILENT = (say("the remote does not answer"), say("{stays}; look at the network, then try again", stays=_STAYS))
_LOCKED = (say("the remote does not let git in"), _SIGN_IN)
REMOTE = Sayings(
    {
        **_host_keys(_STAYS),
        "refusing to update checked out branch": (
            say("somebody works in that branch of the remote"),
            say("{stays}; name another branch in stable.yaml", stays=_STAYS),
        ),
        "stale info": (
            say("somebody else wrote the branch meanwhile"),
            say("{stays}; look who, then publish again", stays=_STAYS),
        ),
        **dict.fromkeys(
            _FULL,
            (say("the disk is full, here or at the remote"), say("{stays}; make room and publish again", stays=_STAYS)),
        ),
        "could not resolve host": (
            say("the remote cannot be found: no network, or no such host"),
            say("{stays}; try again later", stays=_STAYS),
        ),
        "name or service not known": (
            say("the remote cannot be found"),
            say("{stays}; look at the network, then try again", stays=_STAYS),
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
        "not found": (say("there is no such repository"), say("Look at publish: git: remote in stable.yaml")),
        "does not appear to be a git repository": (
            say("there is no such repository"),
            say("Look at publish: git: remote in stable.yaml; make an empty one with git init --bare"),
        ),
        "not a git command": (
            say("git does not take an address of that kind"),
            say("Look at publish: git: remote in stable.yaml"),
        ),
    },
    _STAYS,
)

_KEPT = say("Nothing was changed")
_QUIET = (
    say("the copy does not answer"),
    say("{stays}; look at the network, or whether the stick is in, then try again", stays=_KEPT),
)
_SHUT = (
    say("the copy does not let git in"),
    say("{stays}; give git a key or a saved password for it, then try again", stays=_KEPT),
)
COPY = Sayings(
    {
        **_host_keys(_KEPT),
        **dict.fromkeys(
            _FULL,
            (say("the disk is full, here or at the copy"), say("{stays}; make room, then try again", stays=_KEPT)),
        ),
        "read-only file system": (
            say("the copy's disk takes no writing"),
            say("{stays}; unlock the stick, or take another", stays=_KEPT),
        ),
        "could not resolve host": (
            say("the copy cannot be found: no network, or no such host"),
            say("{stays}; try again later", stays=_KEPT),
        ),
        "name or service not known": (
            say("the copy cannot be found"),
            say("{stays}; look at the network, then try again", stays=_KEPT),
        ),
        **dict.fromkeys(("connection refused", "timed out", "unreachable", "no route to host"), _QUIET),
        "failed to connect": _QUIET,
        **dict.fromkeys(("authentication failed", "could not read username", "could not read password"), _SHUT),
        "permission denied (": _SHUT,
        "permission denied": (
            say("the copy's folder cannot be written"),
            say("{stays}; look whose folder it is", stays=_KEPT),
        ),
        "index.lock": LOCAL.known["index.lock"],
        "dubious ownership": (
            say("the copy's folder belongs to somebody else"),
            say("Work as the person whose folder it is"),
        ),
        "not found": (say("there is no such repository"), say("Look at the address")),
        "does not appear to be a git repository": (
            say("there is no copy of records there"),
            say("Look at the address"),
        ),
        "please tell me who you are": LOCAL.known["please tell me who you are"],
        **dict.fromkeys(
            ("fsck", "corrupt"),
            (
                say("the copy is damaged"),
                say("{stays}; make a new copy at another place: recordgen backup FOLDER", stays=_KEPT),
            ),
        ),
    },
    _KEPT,
)


def explain_failure(asked: str, said: str, sayings: Sayings = LOCAL) -> GitTrouble:
    """The failure of git, in words of ours where they are known, else in its own.

    asked: the first word of the command. said: what git printed.
    """
    if _UNKNOWN_WORD in said:
        way_out = say("Install git {version} or newer, then try again", version=OLDEST_GIT)
        return GitTrouble(say("git on this computer is too old"), way_out)
    found = next((words for part, words in sayings.known.items() if part in said.lower()), None)
    if found:
        return GitTrouble(*found)
    lines = [line.strip() for line in said.splitlines() if line.strip()]
    if asked == "push" and ("[remote rejected]" in said or "declined" in said):
        reason = next((line for line in lines if line.startswith("remote:")), lines[-1])
        reason = quoted(reason.removeprefix("remote:").strip(), 120)
        return GitTrouble(say("the remote refuses the branch: {reason}", reason=reason), sayings.way_out)
    is_entry = asked == "commit"
    message = say("the repository refuses the entry") if is_entry else say("git could not do it")
    if lines:
        message = say("{message}: {reason}", message=message, reason=quoted(lines[0], 120))
    return GitTrouble(message, say("Do what it asks, then try again") if is_entry else sayings.way_out)
