"""Git, run apart from this computer's settings, with what it refuses told in words."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Trouble, quoted

# Nothing of this computer's settings may change a byte, add a signature or run a program of its own.
_SETTINGS = (
    *("core.autocrlf=false", "core.attributesFile=/dev/null", "core.hooksPath=/dev/null", "push.gpgSign=false"),
    # Sealed files can neither be packed nor told by their differences, so no time is spent on trying.
    *("core.compression=0", "pack.window=0"),
)
_ENVIRONMENT = {"LC_ALL": "C", "GIT_TERMINAL_PROMPT": "0", "GIT_ATTR_NOSYSTEM": "1"}
# Set while git runs a hook; they would point git at another repository.
_NOT_PASSED_ON = {"GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_PREFIX", "GIT_OBJECT_DIRECTORY", "GIT_COMMON_DIR"}

_STAYS = "What is served stays as it was"
_SIGN_IN = f"{_STAYS}; give git a key or a saved password for it, then publish again"
# What git says, in small letters, and what is told instead; the first that fits.
_WORDS = {
    "refusing to update checked out branch": (
        "somebody works in that branch of the remote",
        f"{_STAYS}; name another branch in stable.yaml",
    ),
    "stale info": ("somebody else wrote the branch meanwhile", f"{_STAYS}; look who, then publish again"),
    "no space left": ("the disk is full, here or at the remote", f"{_STAYS}; make room and publish again"),
    "could not resolve host": ("the remote cannot be found: no network, or no such host", f"{_STAYS}; try again later"),
    "name or service not known": ("the remote cannot be found", f"{_STAYS}; look at the network, then try again"),
    "connection refused": ("the remote does not answer", f"{_STAYS}; try again later"),
    "timed out": ("the remote does not answer", f"{_STAYS}; try again later"),
    "unreachable": ("the remote does not answer", f"{_STAYS}; look at the network, then try again"),
    "no route to host": ("the remote does not answer", f"{_STAYS}; look at the network, then try again"),
    "failed to connect": ("the remote does not answer", f"{_STAYS}; try again later"),
    "authentication failed": ("the remote does not let git in", _SIGN_IN),
    "could not read username": ("the remote does not let git in", _SIGN_IN),
    "could not read password": ("the remote does not let git in", _SIGN_IN),
    "permission denied (": ("the remote does not let git in", _SIGN_IN),
    "not found": ("there is no such repository", "Look at publish: git: remote in stable.yaml"),
    "does not appear to be a git repository": (
        "there is no such repository",
        "Look at publish: git: remote in stable.yaml; make an empty one with git init --bare",
    ),
    "not a git command": ("git does not take an address of that kind", "Look at publish: git: remote in stable.yaml"),
}


class GitTrouble(Trouble):
    """Something git could not do: what is wrong and the way out, in words."""


@dataclass(frozen=True)
class Git:
    """Git in one folder."""

    folder: Path
    more: Mapping[str, str]

    def __call__(self, *words: str, given: str = "") -> str:
        """What git prints; `given` is typed into it. Raises GitTrouble."""
        settings = [part for one in _SETTINGS for part in ("-c", one)]
        kept = {name: value for name, value in os.environ.items() if name not in _NOT_PASSED_ON}
        try:
            done = subprocess.run(
                ["git", "-C", str(self.folder), *settings, *words],
                input=os.fsencode(given),
                capture_output=True,
                env={**kept, **_ENVIRONMENT, **self.more},
            )
        except FileNotFoundError:
            raise GitTrouble("git is not on this computer", "Install git, then try again") from None
        if done.returncode:
            raise trouble(os.fsdecode(done.stderr + done.stdout))
        return os.fsdecode(done.stdout)


def trouble(said: str) -> GitTrouble:
    """What git said on refusing, in words of ours where they are known, else in its own."""
    lines = [line.strip() for line in said.splitlines() if line.strip()]
    found = next((words for part, words in _WORDS.items() if part in said.lower()), None)
    if found:
        return GitTrouble(*found)
    if "[remote rejected]" in said or "declined" in said:
        reason = next((line for line in lines if line.startswith("remote:")), lines[-1])
        return GitTrouble(
            f"the remote refuses the branch: {quoted(reason.removeprefix('remote:').strip(), 120)}", _STAYS
        )
    first = f": {quoted(lines[0], 120)}" if lines else ""
    return GitTrouble(f"git could not do it{first}", _STAYS)
