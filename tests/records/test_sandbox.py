"""A practice's own templates see what pages are made of, and nothing else."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any

import pytest
from jinja2 import Environment
from jinja2.exceptions import SecurityError, UndefinedError
from mkdocs.config.defaults import MkDocsConfig

from recordgen.packaged import packaged
from recordgen.pictures.cache import PictureCache
from recordgen.records.models.horse import Horse
from recordgen.records.sandbox import Sandbox, sandboxed, templates_of
from recordgen.records.yaml.read import Written


@pytest.fixture
def given(tmp_path: Path) -> dict[str, Any]:
    """The values a template is given: records with the file they stand in, functions, and what draws pictures."""
    horse = Horse(name="Bramble", conformation=("toed in",))
    return {
        "written": Written(horse, tmp_path / "horse.yaml", "records/horse.yaml", b"name: Bramble\n"),
        "horse": horse,
        "day": dt.date(2015, 1, 1),
        "seen": {"depth": [1.5, 2]},
        "said": lambda **facts: str(facts),
        "file": tmp_path / "horse.yaml",
        "kept": PictureCache(None),
        "config": MkDocsConfig(),
        "lines": (line for line in "ab"),
    }


# The sandbox looks an attribute up before it refuses it, and pydantic says that no record should be asked for this one.
DEPRECATED = pytest.mark.filterwarnings("ignore:Accessing the 'model_fields' attribute:DeprecationWarning")
# Ways out that have been told of templates in Python: from a value by its class to every class that is loaded, from a
# function to its globals, from a format string to attributes. Source: the documentation of jinja2.sandbox, and its
# advisories CVE-2016-10745 (format), CVE-2019-10906 (format_map), CVE-2024-56326 (a format held by a name) and
# CVE-2025-27516 (the filter attr). From memory, not read. The others are ways out of what we give.
ATTACKS: list[Any] = [
    "{{ ''.__class__.__mro__[1].__subclasses__() }}",
    "{{ ''['__class__'] }}",
    "{{ horse.__init__.__globals__ }}",
    "{{ said.__globals__['__builtins__']['open']('/etc/passwd').read() }}",
    "{{ said.__code__ }}{{ said.func_code }}",
    "{{ lipsum.__globals__['os'].environ }}",
    "{{ cycler.__init__.__globals__ }}{{ joiner.__init__ }}{{ namespace.__class__ }}",
    "{{ self.__init__.__globals__ }}",
    "{{ dict.__base__ }}{{ dict.mro() }}",
    "{{ range.__init__ }}{{ (1).__class__ }}",
    "{{ lines.gi_frame.f_globals }}",
    "{{ '{0.__class__}'.format(horse) }}",
    "{{ '{h.__class__.__init__.__globals__}'.format_map({'h': horse}) }}",
    "{% set f = '{0.__class__}'.format %}{{ f(horse) }}",
    "{{ horse | attr('__class__') }}",
    "{{ ('{0.__class__}' | safe).format(horse) }}",
    "{{ '{0.file.parent}'.format(written) }}",
    "{{ 'x' | attr('format') | attr('__globals__') }}",
    "{{ [horse] | map(attribute='__class__') | list | first }}",
    "{{ [written] | map(attribute='file.parent') | list | first }}",
    "{{ file.read_text() }}",
    "{{ written.file.read_bytes() }}",
    "{{ written.file.unlink() }}",
    "{{ written.file.parent }}",
    "{{ file | attr('read_text') }}",
    "{{ horse.parse_raw('x', proto='pickle', allow_pickle=True) }}",
    "{{ horse.parse_file('/etc/passwd') }}",
    "{{ horse.model_copy(update={'name': 'x'}) }}",
    pytest.param("{{ horse.model_fields }}{{ horse.model_validate({}) }}", marks=DEPRECATED),
    "{{ kept._folder }}",
    "{{ seen.update({'a': 1}) }}{{ seen.depth.append(3) }}",
    "{{ config.load_file('/etc/passwd') }}",
    "{{ config.plugins.run_event('env') }}",
    "{{ horse.name.encode().hex() }}",
    "{% include '/etc/passwd' %}",
    "{% include '../words/care.yaml' %}",
    "{% import 'os' as os %}{{ os.environ }}",
]


@pytest.mark.parametrize("attack", ATTACKS)
def test_no_way_leads_out_of_what_is_given(given: dict[str, Any], attack: str) -> None:
    """The first step is refused, or there is nothing of that name; either way nothing is shown or changed."""
    (own := given["file"].parent / "site_templates" / "pages").mkdir(parents=True)
    given["file"].write_text("name: Bramble\n")
    (own / "attack.html").write_text(attack)
    with pytest.raises((SecurityError, UndefinedError, LookupError, OSError)) as refused:
        templates_of("pages", given["file"].parent).get_template("attack.html").render(given)

    assert not isinstance(refused.value, OSError) or attack.startswith("{% i")
    assert given["file"].read_text() == "name: Bramble\n"
    assert given["seen"] == {"depth": [1.5, 2]}


@pytest.mark.parametrize(
    ("template", "text"),
    [
        ("{{ horse.name }}, {{ day.year }}, {{ horse.conformation | join }}", "Bramble, 2015, toed in"),
        ("{{ written.record.name.upper() }} {{ written.shown }}", "BRAMBLE records/horse.yaml"),
        ("{% for key, depths in seen.items() %}{{ key }} {{ depths | sum }}{% endfor %}", "depth 3.5"),
        ("{{ said(day='now') }} {{ '{:.1f}'.format(2) }} {{ '%d' % 3 }}", "{'day': 'now'} 2.0 3"),
        ("{% set one = namespace(n=1) %}{% set one.n = 2 %}{{ one.n }}{{ dict(a=1).a }}", "21"),
        ("{% macro m(x) %}<{{ x }}>{% endmacro %}{{ m(1) }}{{ cycler('a', 'b').next() }}", "<1>a"),
        ("{{ config.site_name }}{{ config.extra.get('x', 'y') }}", "Nobodyy"),
    ],
)
def test_what_a_page_is_made_of_can_be_used(given: dict[str, Any], template: str, text: str) -> None:
    """Values, their methods, mappings, functions that were given, macros."""
    given["config"].load_dict({"site_name": "Nobody"})
    given["config"].validate()

    assert Sandbox().from_string(template).render(given) == text


def test_our_own_templates_run_as_they_are_and_all_run_sandboxed_beside_a_practices_own(tmp_path: Path) -> None:
    """The sandbox costs time, so only those pay who need it."""
    ours = templates_of("pages", tmp_path)
    (tmp_path / "site_templates" / "pages").mkdir(parents=True)
    mixed = templates_of("pages", tmp_path)

    assert (ours.sandboxed, mixed.sandboxed) == (False, True)
    assert templates_of("pages", None).sandboxed is False
    assert mixed.get_template("horse.html").filename == str(packaged() / "site_templates" / "pages" / "horse.html")


def test_an_environment_of_the_engine_keeps_its_filters_in_the_sandbox() -> None:
    """Those of the theme, and its globals."""
    made = Environment()
    made.filters["twice"] = lambda text: text * 2
    made.globals["who"] = "Bramble"

    assert sandboxed(made).from_string("{{ who | twice }}").render() == "BrambleBramble"
