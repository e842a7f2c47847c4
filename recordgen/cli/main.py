"""The command line: one group whose commands are loaded when asked for."""

from __future__ import annotations

import importlib
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import click

from recordgen import __version__
from recordgen.cli.help import HelpContext, first_sentence
from recordgen.nearest import did_you_mean
from recordgen.problems import quoted
from recordgen.sentences import say, sentences

# In the order of a trimmer's day; the heads stand in the help.
GROUPS = {
    "Begin and change": ("init", "begin", "rename", "move", "end", "resume", "contact", "correct", "undo"),
    "Write down a visit": ("visit", "field", "photo", "trace", "outlines", "receive", "check", "seen", "commit"),
    "Read and find": ("list", "find", "build", "preview", "due", "rounds", "summary", "repeatability"),
    "Hand over": ("publish", "readers", "verify", "sheet", "share"),
    "Keep safe and join": ("backup", "fetch", "export"),
    "For this computer and its programs": ("schema", "cache", "stables"),
}
# A shell's word for an end by a closed pipe: 128 and the number of the signal. Source: POSIX, sh, Exit Status.
PIPE_CLOSED = 128 + 13
COMMANDS = tuple(name for group in GROUPS.values() for name in group)


class Lazy(click.Group):
    """Loads a command's file only when that command is asked for."""

    pipe_closed = False
    context_class = HelpContext

    def list_commands(self, ctx: click.Context) -> list[str]:
        """The names of all commands, in the order of a trimmer's day."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """The command of that name, or None."""
        if cmd_name not in COMMANDS:
            return None
        found: click.Command = importlib.import_module(f"recordgen.cli.{cmd_name}").command
        found.context_class = HelpContext
        return found

    def main(self, *args: Any, **extra: Any) -> Any:
        """Run a command; where the reader of a pipe has gone, end as one who was told so, without a word."""
        self.pipe_closed = False
        try:
            return super().main(*args, **extra)
        except SystemExit:
            if self.pipe_closed:
                raise SystemExit(PIPE_CLOSED) from None
            raise

    def make_context(self, *args: Any, **extra: Any) -> click.Context:
        """Read the command line, and print help where that is asked for."""
        with self._noticing():
            return super().make_context(*args, **extra)

    def invoke(self, ctx: click.Context) -> Any:
        """Run the command that was asked for."""
        with self._noticing():
            return super().invoke(ctx)

    @contextmanager
    def _noticing(self) -> Iterator[None]:
        try:
            yield
        except BrokenPipeError:
            self.pipe_closed = True
            raise
        except click.UsageError as error:
            from recordgen.cli.misuse import tell_misuse

            tell_misuse(error)
            raise

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """The commands under the head of their group, each with the first sentence of its help."""
        widest = max(map(len, COMMANDS))
        for head, names in GROUPS.items():
            found = [(name, self.get_command(ctx, name)) for name in names]
            with formatter.section(head):
                formatter.write_dl([(name.ljust(widest), first_sentence(one)) for name, one in found if one])

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """The command that was asked for; one that is misspelt is told with the nearest one."""
        typed = args[0]
        if typed not in COMMANDS and not typed.startswith("-"):
            way_out = did_you_mean(typed, COMMANDS, say("The commands are {commands}", commands=", ".join(COMMANDS)))
            ctx.fail(sentences(say("There is no command {typed}", typed=quoted(typed)), way_out))
        return super().resolve_command(ctx, args)


@click.group(cls=Lazy, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, prog_name="recordgen")
def main() -> None:
    """Hoof records in YAML become a private site for each stable.

    \b
        recordgen check
        recordgen build

    Exit codes: 0 all is well, 1 something in the records is wrong, 2 the command was used wrongly.
    """
