"""A command that was used wrongly, told in the practice's language; click tells it in English alone."""

from __future__ import annotations

import click

from recordgen.cli.language import is_english, settle_language
from recordgen.cli.terminal import echo
from recordgen.nearest import did_you_mean
from recordgen.problems import quoted
from recordgen.sentences import NOTHING, Said, say, sentences, worded


def tell_misuse(error: click.UsageError) -> None:
    """Tell what was wrong and end with its exit code.

    In English only what lacks a way out is told here, since click tells the rest so itself.
    """
    ctx = error.ctx or click.get_current_context()
    settle_language(ctx)
    if is_english() and not _is_extra(error):
        return
    echo(say("Usage: {usage}", usage=ctx.get_usage().partition(" ")[2]), err=True)
    echo(say("Try '{command} --help' for help.", command=ctx.command_path), err=True)
    echo(err=True)
    echo(say("Error: {message}", message=sentences(misuse_said(error))), err=True)
    raise click.exceptions.Exit(error.exit_code) from error


def misuse_said(error: click.UsageError) -> Said:
    """The sentence of one misuse: ours where we raised it, else by what click found."""
    match error:
        case click.NoSuchOption():
            missing = say("there is no option {option}", option=error.option_name)
            return sentences(missing, did_you_mean(error.option_name, error.possibilities or (), NOTHING))
        case click.BadOptionUsage():
            return say("{name} wants a value", name=error.option_name)
        case click.MissingParameter():
            return say("{name} is missing", name=_name(error))
        case click.BadParameter():
            name, message = _name(error), _refused(error)
            return say("{name}: {message}", name=name, message=message) if name else message
        case _ if isinstance(error.message, Said):
            return error.message
        case _ if _is_extra(error):
            extra = error.message.partition("(")[2].rstrip(")")
            return say("{words} is too much; a name of several words stands in quotes", words=quoted(extra))
    return worded(error.message)


def _is_extra(error: click.UsageError) -> bool:
    """Tell whether more words were typed than the command takes, as where a name with a space stands without quotes."""
    return "extra argument" in error.message


def _name(error: click.BadParameter) -> str:
    """The option or the word that is wrong, as the help names it."""
    if error.param is None or error.ctx is None:
        return str(error.param_hint or "")
    return error.param.get_error_hint(error.ctx)


def _refused(error: click.BadParameter) -> Said:
    """The reason for refusing a value: our own types say it, click's kinds of value are told here."""
    if isinstance(error.message, Said):
        return error.message
    kind = error.param.type if error.param else None
    if isinstance(kind, click.Choice):
        return say("choose from {words}", words=", ".join(map(str, kind.choices)))
    if isinstance(kind, click.types.IntParamType):
        return say("a whole number is expected")
    if isinstance(kind, click.Path):
        return say("there is no such file or folder, or it is of the other kind")
    return worded(error.message)
