"""Runs git in a folder, apart from what this computer, a hook or another program has set for it."""

from __future__ import annotations

import os
import subprocess
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from recordgen.git.troubles import COPY, LOCAL, REMOTE, GitTrouble, Sayings, explain_failure
from recordgen.sentences import say

# Settings that would alter what git prints, or have it run something unasked.
_PLAIN = {
    "color.ui": "false",
    "core.fsmonitor": "false",
    "core.quotePath": "false",
    "diff.ignoreSubmodules": "all",
    "diff.orderFile": os.devnull,
    "diff.relative": "false",
    "i18n.logOutputEncoding": "UTF-8",
    "log.follow": "false",
    "log.showRoot": "true",
    "log.showSignature": "false",
    "status.relativePaths": "false",
}
_STEERED = {
    "LC_ALL": "C",
    "GIT_TERMINAL_PROMPT": "0",
    "GIT_LITERAL_PATHSPECS": "1",
    "GIT_NO_REPLACE_OBJECTS": "1",
    "GIT_NO_LAZY_FETCH": "1",
}
# Of the variables that steer git, the ones that name its settings' files and how far it looks for a repository.
_PASSED_ON = {
    *("GIT_CONFIG_GLOBAL", "GIT_CONFIG_SYSTEM", "GIT_CONFIG_NOSYSTEM", "GIT_CEILING_DIRECTORIES", "GIT_EXEC_PATH"),
    "GIT_DISCOVERY_ACROSS_FILESYSTEM",
}
_WHO = {f"GIT_{role}_{what}" for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL", "DATE")}
_HOW_TO_REACH = {"GIT_SSH", "GIT_SSH_COMMAND", "GIT_SSH_VARIANT", "GIT_ASKPASS", "GIT_SSL_CAINFO"}

# Tells the records' own hook that the files of an entry were looked through already.
CHECKED = "RECORDGEN_CHECKED"


@dataclass(frozen=True)
class Purpose:
    """The purpose of a run of git: settings and variables of ours, and which variables of the person's reach it."""

    settings: Mapping[str, str]
    variables: Mapping[str, str] = field(default_factory=dict)
    passed_on: frozenset[str] = frozenset()
    sayings: Sayings = LOCAL


# Looks, changes nothing, and reaches no other computer.
READ = Purpose({"protocol.allow": "never"}, {"GIT_OPTIONAL_LOCKS": "0"})
# Adds to the repository under the person's own name, signature and hooks.
KEEP = Purpose({"protocol.allow": "never"}, {"GIT_EDITOR": "true", CHECKED: "1"}, frozenset(_WHO))
# Sends a sealed site: no setting may change a byte, sign or run a program of its own. Sealed files can neither be
# packed nor told by their differences, so no time is spent on trying.
SEND = Purpose(
    {
        "core.autocrlf": "false",
        "core.attributesFile": os.devnull,
        "core.hooksPath": os.devnull,
        "push.gpgSign": "false",
        "core.compression": "0",
        "pack.window": "0",
    },
    {"GIT_ATTR_NOSYSTEM": "1"},
    frozenset(_HOW_TO_REACH),
    REMOTE,
)
# Carries the records to a copy of theirs and back: whole objects alone, and nothing that the copy would have run here.
CARRY = Purpose(
    {
        "core.hooksPath": os.devnull,
        "fetch.fsckObjects": "true",
        "gc.auto": "0",
        "maintenance.auto": "false",
        "push.gpgSign": "false",
        "merge.directoryRenames": "true",
    },
    {},
    frozenset(_HOW_TO_REACH),
    COPY,
)


def run(
    folder: Path,
    *words: str,
    purpose: Purpose = READ,
    given: bytes = b"",
    more: Mapping[str, str] | None = None,
    fine: Collection[int] = (0,),
) -> bytes:
    """The output of git in a folder.

    given: typed into it. more: variables for this one time. fine: codes that tell no trouble. Raises GitTrouble.
    """
    settings = [word for name, value in (_PLAIN | dict(purpose.settings)).items() for word in ("-c", f"{name}={value}")]
    command = ["git", "--no-pager", "-C", str(folder), *settings, *words]
    try:
        done = subprocess.run(command, input=given, capture_output=True, env=_environment(purpose) | dict(more or {}))
    except FileNotFoundError:
        raise GitTrouble(say("git is not on this computer"), say("Install git, then try again")) from None
    if done.returncode not in fine:
        raise explain_failure(words[0], text(done.stderr + done.stdout), purpose.sayings)
    return done.stdout


def _environment(purpose: Purpose) -> dict[str, str]:
    """The variables that reach git: all that are not git's own, of git's own the few that do no harm, and ours."""
    may = _PASSED_ON | purpose.passed_on
    kept = {name: value for name, value in os.environ.items() if not name.startswith("GIT_") or name in may}
    return kept | _STEERED | dict(purpose.variables)


def text(answer: bytes) -> str:
    """An answer of git as text; a file's name survives whatever its bytes are."""
    return answer.decode("utf-8", "surrogateescape")


def as_bytes(names: str) -> bytes:
    """Text for git, the way back of `text`."""
    return names.encode("utf-8", "surrogateescape")
