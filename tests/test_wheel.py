"""An installed recordgen carries its templates and works away from the clone."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from recordgen.site.prose.guide import guide_pictures
from tests.conftest import RECORDS, ROOT, TODAY


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The files of the wheel, unpacked as an installer does."""
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)], cwd=ROOT, check=True)
    with zipfile.ZipFile(next(folder.glob("*.whl"))) as wheel:
        wheel.extractall(folder / "installed")
    return folder / "installed"


def test_the_wheel_carries_templates_and_base_configuration(installed: Path) -> None:
    """Pages, pictures of the guide, words, theme and mkdocs.yml lie inside the package."""
    wanted = ["mkdocs.yml", "site_templates/pages/horse.html", "site_templates/words/measures.yaml", "py.typed"]
    wanted += [f"site_templates/pages/guide/pictures/{file.name}" for file in guide_pictures().values()]

    assert [name for name in wanted if not (installed / "recordgen" / name).is_file()] == []


def test_the_installed_package_builds_a_site(installed: Path, tmp_path: Path) -> None:
    """From any folder, with the clone out of reach, a stable's site is built."""
    words = ["build", "--stable", "willowmere", "--records", str(RECORDS), "--today", TODAY.isoformat()]
    code = f"import sys; sys.path.insert(0, {str(installed)!r}); import recordgen; print(recordgen.__file__)\n"
    code += "from recordgen.cli import main; main(sys.argv[1:])"
    done = subprocess.run(
        [sys.executable, "-c", code, *words], cwd=tmp_path, env=dict(os.environ), capture_output=True, text=True
    )

    assert done.returncode == 0, done.stderr
    assert done.stdout.startswith(str(installed))
    assert (tmp_path / "sites/willowmere/horses/bramble.html").is_file()
