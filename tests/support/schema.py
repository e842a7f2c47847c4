"""What a validator of the published standard complains about."""

from __future__ import annotations

import jsonschema
import yaml

from recordgen.records.write.json_schema import schema


class EditorsYaml(yaml.SafeLoader):
    """Reads YAML as an editor does: 1.2, where only true, false, null and plain numbers are more than text."""


def complaints(text, kind="visit"):
    """What an editor would underline, by place."""
    checker = jsonschema.Draft202012Validator(schema(kind))
    found = checker.iter_errors(yaml.load(text, EditorsYaml))
    return sorted("/".join(map(str, error.absolute_path)) for error in found)
