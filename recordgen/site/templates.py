"""The templates of the pages, ours or a practice's own, compiled once."""

from __future__ import annotations

import traceback
from collections.abc import Callable
from datetime import date
from pathlib import Path

from jinja2 import BytecodeCache, Environment, TemplateError
from jinja2.bccache import Bucket
from markupsafe import Markup

from recordgen.days import month_day, month_name, month_year, short_day, weekday_day
from recordgen.hoof.details import details_of, handling_of
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.naming import Naming
from recordgen.problems import Trouble
from recordgen.records.models.names import FEET
from recordgen.records.sandbox import templates_of
from recordgen.site.amendments import part_told
from recordgen.site.pages.ticks import tick_key


class Compiled(BytecodeCache):
    """Compiled templates of one process, by their source. None is kept on a disk, since a damaged one would be run."""

    def __init__(self) -> None:
        self._known: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give back what was compiled before."""
        if bucket.key in self._known:
            bucket.bytecode_from_string(self._known[bucket.key])

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Remember what was compiled."""
        self._known[bucket.key] = bucket.bytecode_to_string()


# Compiled apart: in the sandbox the same template becomes another program.
_COMPILED = {sandboxed: Compiled() for sandboxed in (False, True)}


def compiled_once(made: Environment) -> Environment:
    """The environment itself, each template of which is from now on compiled once, however many sites are built."""
    made.bytecode_cache = _COMPILED[made.sandboxed]
    return made


def environment(records: Path, naming: Naming) -> Environment:
    """An environment that escapes whatever was typed, with the filters the pages use."""
    made = compiled_once(templates_of("pages", records, autoescape=True, auto_reload=False))
    made.filters |= {
        "day": naming.day,
        "day_short": short_day,
        "month_day": month_day,
        "weekday_day": weekday_day,
        "iso": date.isoformat,
        "foot": naming.foot,
        "place": naming.place,
        "named": named(naming),
        "weeks": _weeks,
        "plain": _plain,
        "plain_signed": _plain_signed,
        "start_upper": _start_upper,
        "a_month": naming.a_month,
        "month_name": month_name,
        "month_year": month_year,
        "short": "{:g}".format,
        "age": _age,
    }
    made.globals |= {"part_told": lambda part, private: part_told(part, private, naming), "tick_key": tick_key}
    made.globals |= {
        "details": lambda found: details_of(found, naming),
        "handling": lambda one: handling_of(one, naming),
    }
    made.globals |= {"FEET": FEET, "phrase": naming.phrase, "number": number, "signed": signed, "named": named(naming)}
    return made


# What a template of a practice's own may stumble over while it is filled in.
FAULTS = (TemplateError, TypeError, ValueError, LookupError, AttributeError)


def rendered(made: Environment, template: str, **values: object) -> str:
    """The text of a template. Raises Trouble with the file, the line and the reason."""
    try:
        return made.get_template(template).render(values)
    except FAULTS as fault:
        raise Trouble(
            f"the template {_where(fault, template)} cannot be filled in: {fault}", "Mend it, or take it out"
        ) from fault


def _where(fault: BaseException, template: str) -> str:
    line = getattr(fault, "lineno", None)
    frames = traceback.extract_tb(fault.__traceback__)
    inside = [frame for frame in frames if "site_templates" in frame.filename]
    if inside and line is None:
        return f"{Path(inside[-1].filename).name}, line {inside[-1].lineno},"
    return f"{getattr(fault, 'name', None) or template}, line {line or 1},"


def number(measure: Measure, value: float | None) -> Markup:
    """A reading with the digits its measure is told in; a dash where there is none."""
    if value is None:
        return Markup('<span class="none" title="not recorded">–</span>')
    digits = measure.words.decimals
    text = f"{value:.{digits}f}" if digits != 1 and value == round(value, digits) else f"{value:.{max(digits, 1)}f}"
    return Markup(_minus(text.removesuffix(".0") if digits < 2 else text))


def signed(measure: Measure, value: float) -> str:
    """A change with its sign."""
    text = str(number(measure, abs(value)))
    return text if value == 0 else f"{'+' if value > 0 else '−'}{text}"


def named(naming: Naming) -> Callable[[Measure], str]:
    """A namer of measures: name, and the zone for those of the wall."""
    return lambda measure: naming.measure(measure.words.name, measure.zone)


def _minus(text: str) -> str:
    return text.replace("-", "−")


def _age(months: int) -> str:
    if months < 24:
        return "1 month" if months == 1 else f"{months} months"
    return f"{months // 12} years"


def _plain(value: float, digits: int = 0) -> str:
    return _minus(f"{value:.{digits}f}")


def _plain_signed(value: float) -> str:
    return _minus(f"{value:+.0f}") if value else "0"


def _weeks(days: int) -> str:
    if days < 14:
        return "1 day" if days == 1 else f"{days} days"
    return f"{days // 7} weeks"


def _start_upper(text: str) -> str:
    return text[:1].upper() + text[1:]
