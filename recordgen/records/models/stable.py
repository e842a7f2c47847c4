"""A stable that is visited, whom to reach there, and where its site is published."""

from __future__ import annotations

import re
from typing import Annotated, Self

from pydantic import AfterValidator, WithJsonSchema, model_validator

from recordgen.problems import quoted
from recordgen.records.models.fields import (
    Day,
    OneLine,
    Record,
    Text,
    field,
    list_field,
    refusal,
)
from recordgen.sentences import say


class Contact(Record):
    """Somebody to reach at a stable."""

    name: OneLine = field("name", ...)
    role: OneLine | None = field("owner, manager, groom")
    phone: OneLine | None = field("telephone number, as dialled")
    email: OneLine | None = field("address")


class Left(Record):
    """The end of a horse's record, or of the visits to a stable."""

    date: Day = field("the day", ...)
    why: Text | None = field("died, sold, left, or in your own words")


class SeenEntry(Record):
    """A warning about this file, or a file beside it, that was seen and may stand; it holds for what it said then."""

    warning: OneLine = field("the code at the end of the warning's line, such as value-unlikely", ...)
    at: OneLine | None = field("the place it is about, such as feet.left_fore, or the file beside this one")
    was: Text | None = field("what the warning said; where it says anything else it is open again")
    on: Day = field("the day it was seen", ...)
    why: Text = field("why it may stand", ...)


SEEN = "warnings that were seen and may stand; recordgen seen writes them"


class Stable(Record):
    """A stable that is visited."""

    name: OneLine = field("name of the stable", ...)
    contacts: tuple[Contact, ...] = list_field("people to reach; on the trimmer's site alone")
    near: tuple[Text, ...] = list_field("folders of stables that can be visited on the same day")
    vet: Contact | None = field("the stable's vet; shown to owners beside a call to the vet")
    left: Left | None = field("since when and why it is visited no more")
    publish: Publish | None = field("where and how its site is published")
    note: Text | None = field("a note for everybody at the stable")
    private_note: Text | None = field("a note for the trimmer alone, such as the gate's code")
    seen: tuple[SeenEntry, ...] = list_field(SEEN)


# Scheme, host, perhaps a port, and a path of plain signs; nothing after it.
_ADDRESS = re.compile(r"https?://([a-z0-9.-]+|\[[0-9a-f:]+\])(:[0-9]{1,5})?(/[a-z0-9._~-]+)*/?", re.IGNORECASE)
_WITH_PASSWORD = re.compile(r"[a-z+]+://[^/@]*:[^/@]*@", re.IGNORECASE)
# Names that git takes for a branch and that no program takes for an option.
_BRANCH = re.compile(r"(?!.*(\.\.|//|\.lock(/|$)|/\.|\.(/|$)|/$))[A-Za-z0-9][A-Za-z0-9._/-]*")


def _address(text: str) -> str:
    """An address with its closing stroke, so that a page's path follows it."""
    if not _ADDRESS.fullmatch(text):
        raise refusal(
            "address-form",
            say("{text} is not the address of a site", text=quoted(text)),
            say("Write it like https://willowmere.example.org/"),
        )
    return text if text.endswith("/") else f"{text}/"


def _remote(text: str) -> str:
    if _WITH_PASSWORD.match(text):
        way_out = say("Take it out, and let git keep it: a key, or a saved password")
        raise refusal(
            "address-password", say("a password stands in this address, and records keep no secrets"), way_out
        )
    return text


def _branch_name(text: str) -> str:
    if not _BRANCH.fullmatch(text):
        raise refusal(
            "branch-name",
            say("{text} is not the name of a branch", text=quoted(text)),
            say("Write a plain name, such as site"),
        )
    return text


SiteAddress = Annotated[Text, AfterValidator(_address), WithJsonSchema({"type": "string", "pattern": "^https?://"})]
Remote = Annotated[Text, AfterValidator(_remote), WithJsonSchema({"type": "string", "minLength": 1})]
BranchName = Annotated[Text, AfterValidator(_branch_name), WithJsonSchema({"type": "string"})]


class Branch(Record):
    """A branch of a git repository that holds the published site and nothing else."""

    remote: Remote = field("address or folder of the repository; never the one the records go to", ...)
    branch: BranchName = field("name of the branch, which is written anew each time", "site")


class Publish(Record):
    """The place where recordgen publish puts a site, and the address people open: one of to, git, command."""

    address: SiteAddress = field("the address people open, such as https://willowmere.example.org/", ...)
    to: Text | None = field("folder that is served there, which holds nothing else; counted from the records' folder")
    git: Branch | None = field("branch that is served there")
    command: Text | None = field(
        "program that sends the sealed folder, such as: rsync -a --delete {folder}/ host:site/; it runs without a shell"
    )

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if sum(way is not None for way in (self.to, self.git, self.command)) != 1:
            raise refusal(
                "publish-one-of-three",
                say("it holds one of to, git and command"),
                say("Write publish: {{address: https://..., to: folder}}"),
            )
        if self.command and "{folder}" not in self.command:
            raise refusal(
                "publish-command-folder",
                say("the command does not name {{folder}}"),
                say("Write {{folder}} where the sealed folder's path belongs"),
            )
        return self
