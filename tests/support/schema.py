"""Complaints of a validator of the published standard."""

from __future__ import annotations

import re

import jsonschema
import yaml

from recordgen.records.write.json_schema import FileKind, schema


class EditorsYaml(yaml.SafeLoader):
    """Reads YAML as an editor does: 1.2, where only true, false, null and plain numbers are more than text."""


EditorsYaml.yaml_implicit_resolvers = {
    sign: [(tag, what) for tag, what in found if not tag.endswith((":timestamp", ":bool", ":merge"))]
    for sign, found in yaml.SafeLoader.yaml_implicit_resolvers.items()
}
EditorsYaml.add_implicit_resolver("tag:yaml.org,2002:bool", re.compile("^(true|false)$"), list("tf"))


def complaints(text: str, kind: FileKind = "visit") -> list[str]:
    """Complaints an editor would underline, by place."""
    checker = jsonschema.Draft202012Validator(schema(kind))
    found = checker.iter_errors(yaml.load(text, EditorsYaml))
    return sorted("/".join(map(str, error.absolute_path)) for error in found)
