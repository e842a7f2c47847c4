"""Any visit that the models allow, as plain values under the keys of a visit's file, drawn by hypothesis."""

from __future__ import annotations

import datetime as dt
from random import Random
from typing import Any, Literal, get_args, get_origin

from hypothesis import strategies as st
from hypothesis.strategies import SearchStrategy
from pydantic.fields import FieldInfo

from recordgen.problems import is_visible
from recordgen.records.models.annotations import bare, choices, extra, is_model
from recordgen.records.models.tracing import LANDMARKS, ONE, RIDGE_PLACES, TracedView
from recordgen.records.models.visit import IN_HALVES, LAMENESS_SCALES, Visit

Values = dict[str, Any]

_SIGNS = st.characters(blacklist_categories=["Cs", "Cc", "Zl", "Zp", "Cn"], blacklist_characters="\ufeff")
_WORDS = st.text(_SIGNS, min_size=1, max_size=150).map(str.strip).filter(bool)
_LINES = st.from_regex("[a-zà-þА-я0-9][\\w&' .:#-]{0,30}", fullmatch=True).map(str.strip)
_LINES = _LINES.filter(lambda text: all(map(is_visible, text)))
# Notes run over several lines, and some are long.
TEXTS = st.one_of(
    _WORDS,
    st.lists(_WORDS, min_size=2, max_size=4).map("\n".join),
    st.lists(st.from_regex("[a-zA-Z]{1,9}[,.:#'\"-]?", fullmatch=True), min_size=20, max_size=40).map(" ".join),
    st.sampled_from(["no", "~", "null", "0012", "1:30", "2026-11-27", "- a", "# b", "{c}", "'d'", "e: f", "<<", "?"]),
)
_DAYS = st.dates(dt.date(1950, 1, 1), dt.date(2100, 1, 1)).map(dt.date.isoformat)


def visits() -> SearchStrategy[Values]:
    """Visits with any of their keys."""
    return _record(Visit)


def _record(model: Any) -> SearchStrategy[Values]:
    if model.__name__ == "Tracing":
        return st.sampled_from(sorted(LANDMARKS)).flatmap(_tracing)
    fields = {(info.alias or name): _field(info) for name, info in model.model_fields.items()}
    must = {info.alias or name for name, info in model.model_fields.items() if info.is_required()}
    drawn = st.fixed_dictionaries(
        {name: one for name, one in fields.items() if name in must},
        optional={name: one for name, one in fields.items() if name not in must},
    )
    return drawn.map(_RULES[model.__name__]) if model.__name__ in _RULES else drawn


def _field(info: FieldInfo) -> SearchStrategy[Any]:
    told = extra(info)
    if "possible" in told:
        low, high = told["possible"]
        return _numbers(low, high, bare(info.annotation) is int)
    # A name stands on one line; the model asks for it beside its type.
    return _LINES if "_one_line" in f"{info.annotation} {info.metadata}" else _value(bare(info.annotation))


def _numbers(low: float, high: float, whole: bool = False) -> SearchStrategy[float]:
    """Numbers with up to four decimals, as a quantity is read."""
    if whole:
        return st.integers(int(low), int(high))
    return st.integers(int(low * 10_000), int(high * 10_000)).map(lambda number: number / 10_000)


def _value(annotation: Any) -> SearchStrategy[Any]:
    if is_model(annotation):
        return _record(annotation)
    if get_origin(annotation) is tuple:
        return st.lists(_value(bare(get_args(annotation)[0])), max_size=2)
    if get_origin(annotation) is dict:
        key, inner = map(bare, get_args(annotation))
        return st.dictionaries(_value(key) if key is not str else _KEYS, _value(inner), max_size=2)
    if get_origin(annotation) is Literal or list(choices(annotation)):
        return st.sampled_from(list(choices(annotation)))
    plain = {bool: st.booleans(), str: TEXTS, dt.date: _DAYS, float: _numbers(0, 500), int: st.integers(0, 500)}
    return plain[annotation]


_KEYS = (
    st.text(_SIGNS.filter(str.isprintable), min_size=1, max_size=30)
    .map(str.strip)
    .filter(lambda key: key and key != "<<")
)


def _lameness(value: Values) -> Values:
    low, high = LAMENESS_SCALES[value["scale"]]
    steps = 2 if value["scale"] in IN_HALVES else 1
    return value | {"grade": low + round(value["grade"] * steps) % ((high - low) * steps + 1) / steps}


def _condition(value: Values) -> Values:
    return value | {name: round(value[name] * 2) / 2 for name in ("henneke", "crest") if name in value}


def _next(value: Values) -> Values:
    both = {"weeks": 6, **value}
    both.pop("date" if len(value.keys() & {"weeks", "date"}) != 1 else "", None)
    return both if "date" not in value or "weeks" in value else value


def _vet(value: Values) -> Values:
    return value if value["kind"] == "seen" else {key: one for key, one in value.items() if key != "ends"}


# What a model asks for beyond the kind of each of its values.
_RULES = {"Lameness": _lameness, "Condition": _condition, "Next": _next, "VetEntry": _vet}


def _tracing(view: TracedView) -> SearchStrategy[Values]:
    """Landmarks drawn by lot; the order and number of their points is what the model looks at."""
    return st.tuples(st.integers(0, 10**9).map(Random), st.booleans()).map(lambda drawn: _traced(view, *drawn))


def _traced(view: TracedView, lot: Random, more: bool) -> Values:
    def point() -> list[float]:
        return [lot.randrange(16_000_000) / 10_000, lot.randrange(12_000_000) / 10_000]

    takes = {name: takes for name, takes in LANDMARKS[view].items() if lot.random() < 0.7} or LANDMARKS[view]
    marks = {
        name: point() if one == ONE else [point() for _ in range(one.least + (more and not one.exactly))]
        for name, one in takes.items()
    }
    scale = {"from": [100, 1100], "to": [500.25, 1100], "length": lot.randrange(1, 2000)}
    scale |= {"lay": lot.choice(["on foot", "on ground", "unknown"])} if more else {}
    told: Values = {"view": view, "moment": lot.choice(["before", "after"]), "image": [1600, 1200], "scale": scale}
    if more and view == "sole":
        drawn: list[Values] = [{"drawn": "straight"}, {"drawn": "smooth"}, {"drawn": "smooth", "model": 1}]
        drawn += [{"drawn": "smooth", "ridge": [1.5] * RIDGE_PLACES}] if "white_line" in takes else []
        told |= lot.choice(drawn)
        told |= {"sha256": "0123456789abcdef" * 4}
    return {**told, **({"file": "2026-11-27-left-fore-sole-after.jpg", "hand_error": 1.25} if more else {}), **marks}
