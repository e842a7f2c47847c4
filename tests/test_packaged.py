"""Where the templates lie."""

from pathlib import Path

import pytest

from recordgen import packaged as module
from recordgen.packaged import packaged


def test_the_templates_are_found_in_a_clone() -> None:
    """Beside the package."""
    assert (packaged() / "site_templates" / "records" / "visit.yaml.jinja").is_file()


def test_the_templates_are_found_once_installed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Inside the package, as the wheel puts them."""
    (tmp_path / "recordgen" / "site_templates").mkdir(parents=True)
    monkeypatch.setattr(module, "__file__", str(tmp_path / "recordgen" / "packaged.py"))

    assert packaged.__wrapped__() == tmp_path / "recordgen"
