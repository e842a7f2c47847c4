"""The templates of the pages, ours or a practice's own, compiled once."""

from __future__ import annotations

import re
import traceback
import unicodedata
from collections.abc import Callable
from contextlib import suppress
from datetime import date
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import BytecodeCache, Environment, TemplateError
from jinja2.bccache import Bucket
from markupsafe import Markup

from recordgen.hoof.details import details_of, handling_of
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.naming import Naming
from recordgen.language.catalogs import Catalog, catalog_of
from recordgen.language.direction import isolated, with_isolated_facts
from recordgen.problems import Trouble
from recordgen.records.models.horse import Aim
from recordgen.records.models.names import FEET
from recordgen.records.sandbox import templates_of
from recordgen.sentences import say
from recordgen.site.amendments import describe_part
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
    """An environment that escapes and sets apart whatever was typed, with the filters the pages use."""
    language = naming.language
    made = compiled_once(templates_of("pages", records, autoescape=True, auto_reload=False, finalize=isolated))
    speak(made, catalog_of(language.code))
    made.filters |= {
        "day": naming.day,
        "day_short": language.short_day,
        "month_day": language.month_day,
        "weekday_day": language.weekday_day,
        "short_month": language.short_month,
        "short_month_day": language.short_month_day,
        "iso": date.isoformat,
        "foot": naming.foot,
        "place": naming.place,
        "named": measure_namer(naming),
        "value": naming.value,
        "caution_name": naming.caution,
        "unit": naming.unit,
        "way": lambda way: naming.listed([naming.value(one) for one in way.split(" and ")]),
        "inside": language.inside,
        "translated": catalog_of(language.code).gettext,
        "dialled": dialled,
        "length_of": lambda mm, digits=0: naming.quantities.length(mm, digits),
        "length_figure": lambda mm, digits=0: _minus(naming.quantities.length_figure(mm, digits)),
        "span_of": lambda mm, digits=1: _minus(naming.quantities.span(mm, digits)),
        "span_figure": lambda mm, digits=1: _minus(naming.quantities.span_figure(mm, digits)),
        "weeks": naming.lasting,
        "plain": lambda value, digits=0: naming.figures(_plain(value, digits)),
        "plain_signed": _plain_signed,
        "start_upper": _start_upper,
        "a_month": naming.a_month,
        "month_name": language.month_name,
        "month_year": language.month_year,
        "short": lambda value: naming.figures(f"{value:g}"),
        "age": lambda months: _age(months, naming),
        "born": naming.born,
    }
    made.globals |= {"describe_part": lambda part, private: describe_part(part, private, naming), "tick_key": tick_key}
    made.globals |= {
        "details": lambda found: details_of(found, naming),
        "handling": lambda one: handling_of(one, naming),
    }
    phrase, counted = with_isolated_facts(naming.phrase), with_isolated_facts(naming.counted)
    made.globals |= {"FEET": FEET, "phrase": phrase, "counted": counted, "named": measure_namer(naming)}
    made.globals |= {"number": partial(number, naming), "signed": partial(signed, naming), "language": language}
    made.globals |= {"difference": partial(difference, naming), "roughly": partial(roughly, naming)}
    made.globals |= {"bound": partial(bound, naming)}
    made.globals |= {"quantities": naming.quantities, "one_mm": lambda: one_mm(naming)}
    return made


def compile_all(made: Environment, leave_out: tuple[str, ...] = ()) -> None:
    """Compile the templates of an environment now; what is wrong with one is told when it is filled in.

    One that no page uses may be wrong, or not to be opened. leave_out: those whose names begin so.
    """
    for name in made.list_templates(filter_func=lambda name: name.endswith(".html") and not name.startswith(leave_out)):
        with suppress(TemplateError, UnicodeError, OSError):
            made.get_template(name)


LENGTH = "mm"
# An owner reads sizes from here on in whole units.
WHOLE_FROM = 3
_SAYERS = ("gettext", "ngettext", "pgettext", "npgettext")


def speak(made: Environment, catalog: Catalog) -> None:
    """Let the templates of an environment say their sentences in the language of a catalog."""
    # The extension adds its callables, which it types as any.
    translating: Any = made
    translating.install_gettext_callables(
        catalog.gettext, catalog.ngettext, newstyle=True, pgettext=catalog.pgettext, npgettext=catalog.npgettext
    )
    made.globals |= {name: with_isolated_facts(translating.globals[name]) for name in _SAYERS}


# What a template of a practice's own may stumble over while it is filled in.
FAULTS = (TemplateError, TypeError, ValueError, LookupError, AttributeError)


def render(made: Environment, template: str, **values: object) -> str:
    """The text of a template. Raises Trouble with the file, the line and the reason."""
    try:
        return made.get_template(template).render(values)
    except FAULTS as fault:
        raise Trouble(
            say("the template {where} cannot be filled in: {fault}", where=_where(fault, template), fault=fault),
            say("Mend it, or take it out"),
        ) from fault


def _where(fault: BaseException, template: str) -> str:
    line = getattr(fault, "lineno", None)
    frames = traceback.extract_tb(fault.__traceback__)
    inside = [frame for frame in frames if "site_templates" in frame.filename]
    if inside and line is None:
        return say("{file}, line {line},", file=Path(inside[-1].filename).name, line=inside[-1].lineno)
    return say("{file}, line {line},", file=getattr(fault, "name", None) or template, line=line or 1)


def number(naming: Naming, measure: Measure, value: float | None) -> Markup:
    """A reading with the digits its measure is told in; a dash where there is none."""
    if value is None:
        return Markup('<span class="none" title="{}">–</span>').format(naming.phrase("not_recorded"))
    if naming.units.of(measure.unit) != measure.unit:
        return Markup(_minus(_in_units(naming, measure, value)))
    digits = measure.words.decimals
    text = f"{value:.{digits}f}" if digits != 1 and value == round(value, digits) else f"{value:.{max(digits, 1)}f}"
    return Markup(naming.figures(_minus(text.removesuffix(".0") if digits < 2 else text)))


def _in_units(naming: Naming, measure: Measure, value: float) -> str:
    """A reading in another unit than ours: of a rule in its fractions, out of a tracing alone as a decimal."""
    written = naming.quantities
    if measure.unit != LENGTH:
        return written.figure(value, measure.unit, measure.words.decimals)
    by_rule = bool(measure.path or measure.parts)
    return written.length_figure(value) if by_rule else written.span_figure(value, measure.words.decimals)


def signed(naming: Naming, measure: Measure, value: float) -> str:
    """A change with its sign."""
    text = str(difference(naming, measure, abs(value)))
    return text if value == 0 else f"{'+' if value > 0 else '−'}{text}"


def difference(naming: Naming, measure: Measure, value: float, digits: int | None = None) -> str:
    """A figure that is no reading: a change, a bound or an error, in the unit of a measure as it is shown.

    digits: in our own unit; else as a reading has them.
    """
    if measure.unit == LENGTH and naming.units.inches:
        return _minus(naming.quantities.span_figure(value, measure.words.decimals if digits is None else digits))
    return str(number(naming, measure, value)) if digits is None else naming.figures(_plain(value, digits))


def bound(naming: Naming, measure: Measure, aim: Aim) -> str:
    """The value that an aim sets, in the unit of its measure as it is shown."""
    value = aim.over if aim.under is None else aim.under
    if measure.unit == LENGTH:
        return naming.quantities.length_figure(value or 0)
    return naming.figures(f"{value:g}")


def one_mm(naming: Naming) -> str:
    """The error of a usual reading, as people call it."""
    return naming.quantities.span(1) if naming.units.inches else naming.phrase("one_mm")


def roughly(naming: Naming, measure: Measure, value: float) -> str:
    """A size as an owner reads it: whole units from three on; of lengths in inches what a rule reads."""
    if measure.unit == LENGTH and naming.units.inches:
        return _minus(naming.quantities.length_figure(value))
    return difference(naming, measure, value, 0 if value >= WHOLE_FROM else 1)


def measure_namer(naming: Naming) -> Callable[[Measure], str]:
    """A namer of measures: name, and the zone for those of the wall."""
    return lambda measure: naming.measure(measure.words.name, measure.zone)


def _minus(text: str) -> str:
    return text.replace("-", "−")


def _age(months: int, naming: Naming) -> str:
    return naming.counted("month", months) if months < 24 else naming.counted("year", months // 12)


def _plain(value: float, digits: int = 0) -> str:
    return _minus(f"{value:.{digits}f}")


def _plain_signed(value: float) -> str:
    return _minus(f"{value:+.0f}") if value else "0"


def dialled(phone: str) -> str:
    """A telephone number as an address takes it: in the digits of every keypad, without spaces."""
    return "".join(str(unicodedata.digit(sign, sign)) for sign in phone if not sign.isspace())


def css_text(text: str) -> Markup:
    """Text inside quotation marks of a style sheet, each sign but letters and digits of ASCII by its number.

    Source: CSS Syntax Module Level 3, section 4.3.7.
    """
    return Markup(re.sub(r"[^A-Za-z0-9]", lambda sign: f"\\{ord(sign[0]):x} ", text))


def _start_upper(text: str) -> str:
    return text[:1].upper() + text[1:]
