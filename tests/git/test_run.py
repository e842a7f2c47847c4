"""The environment that reaches git, by a program in git's place that tells it."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.git.run import KEEP, READ, SEND, Purpose, run, text
from recordgen.git.troubles import COPY, LOCAL, REMOTE, explain_failure

# Variables of git's own manual (git(1), ENVIRONMENT VARIABLES, and git-config(1)) that point it at another
# repository, at other settings, or at a program to run.
STEERING = [
    *("GIT_DIR", "GIT_WORK_TREE", "GIT_PREFIX", "GIT_COMMON_DIR", "GIT_OBJECT_DIRECTORY", "GIT_NAMESPACE"),
    *("GIT_ALTERNATE_OBJECT_DIRECTORIES", "GIT_CONFIG", "GIT_CONFIG_COUNT", "GIT_CONFIG_KEY_0", "GIT_CONFIG_VALUE_0"),
    *("GIT_CONFIG_PARAMETERS", "GIT_EXTERNAL_DIFF", "GIT_PROXY_COMMAND", "GIT_TEMPLATE_DIR", "GIT_TRACE", "GIT_PAGER"),
    *("GIT_REPLACE_REF_BASE", "GIT_SHALLOW_FILE", "GIT_GLOB_PATHSPECS", "GIT_ATTR_SOURCE", "GIT_SEQUENCE_EDITOR"),
    "GIT_INDEX_FILE",
]
LET_IN = {
    "GIT_AUTHOR_NAME": KEEP,
    "GIT_COMMITTER_EMAIL": KEEP,
    "GIT_SSH_COMMAND": SEND,
    "GIT_ASKPASS": SEND,
}
PURPOSES = [READ, KEEP, SEND]


@pytest.fixture(autouse=True)
def _told_by_git(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A git that prints its variables and its words."""
    program = tmp_path / "bin" / "git"
    program.parent.mkdir()
    program.write_text('#!/bin/sh\nenv\necho "WORDS=$*"\n')
    program.chmod(0o755)
    monkeypatch.setenv("PATH", f"{program.parent}:/usr/bin:/bin")


def told(folder: Path, purpose: Purpose) -> dict[str, str]:
    """The variables that reach git."""
    lines = text(run(folder, "status", purpose=purpose)).splitlines()
    return dict(line.split("=", 1) for line in lines if "=" in line)


@pytest.mark.parametrize("purpose", PURPOSES)
@pytest.mark.parametrize("name", STEERING)
def test_nothing_steers_git_elsewhere(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, purpose: Purpose, name: str
) -> None:
    """Whatever a hook or another program has set."""
    monkeypatch.setenv(name, "/elsewhere")

    assert name not in told(tmp_path, purpose)


@pytest.mark.parametrize("name", LET_IN)
def test_a_few_reach_it_for_one_purpose(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    """Who somebody is for a new entry, how a remote is reached for sending."""
    monkeypatch.setenv(name, "mine")

    assert [purpose for purpose in PURPOSES if told(tmp_path, purpose).get(name)] == [LET_IN[name]]


@pytest.mark.parametrize("purpose", PURPOSES)
def test_what_everybody_may_set_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, purpose: Purpose) -> None:
    """The files of settings, how far git looks, and what is not git's."""
    for name in ("GIT_CONFIG_GLOBAL", "GIT_CEILING_DIRECTORIES", "HTTPS_PROXY", "SSH_AUTH_SOCK"):
        monkeypatch.setenv(name, "mine")
    found = told(tmp_path, purpose)

    assert found["GIT_CONFIG_GLOBAL"] == found["GIT_CEILING_DIRECTORIES"] == found["HTTPS_PROXY"] == "mine"
    assert (found["SSH_AUTH_SOCK"], found["LC_ALL"], found["GIT_TERMINAL_PROMPT"]) == ("mine", "C", "0")


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("Host key verification failed.\r\nfatal: Could not read from remote repository.", "does not know that host"),
        ("@ WARNING: REMOTE HOST IDENTIFICATION HAS CHANGED! @\nHost key verification failed.", "shows another key"),
    ],
)
def test_a_host_whose_key_is_not_the_known_one_is_told(said: str, told: str) -> None:
    """As OpenSSH 9.2 says it, for a copy and for a site; a key that changed is told before one that is new."""
    for sayings in (COPY, REMOTE):
        assert told in explain_failure("ls-remote", said, sayings).message


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ("merge-tree", "usage: git merge-tree <base-tree> <branch1> <branch2>"),
        ("fetch", "error: unknown option `no-write-fetch-head'\nusage: git fetch [<options>] [<repository>]"),
    ],
)
def test_a_git_that_is_too_old_is_told(asked: str, said: str) -> None:
    """As older ones answer words that came later; which git is needed stands in the way out. From memory, not read."""
    told = explain_failure(asked, said, COPY)

    assert (told.message, told.way_out) == (
        "git on this computer is too old",
        "Install git 2.38 or newer, then try again",
    )


@pytest.mark.parametrize(
    "said",
    [
        "fatal: Unable to create '/home/wren/practice/.git/index.lock': Permission denied",
        "error: insufficient permission for adding an object to repository database .git/objects",
    ],
)
def test_a_folder_that_git_may_not_write_is_not_taken_for_a_busy_git(said: str) -> None:
    """As git 2.39 says it: a lock that could not be made was left by nobody."""
    assert explain_failure("add", said, LOCAL).message == "git may not write into the records' folder"


def test_looking_reaches_no_other_computer_and_runs_no_watcher(tmp_path: Path) -> None:
    """Nor is anything written meanwhile."""
    found = told(tmp_path, READ)

    assert "-c protocol.allow=never" in found["WORDS"]
    assert "-c core.fsmonitor=false" in found["WORDS"]
    assert found["GIT_OPTIONAL_LOCKS"] == "0"


def test_a_hook_that_declines_is_no_remote() -> None:
    """Only what is pushed can be declined by one."""
    assert explain_failure("commit", "declined", LOCAL).message == "the repository refuses the entry: 'declined'"
