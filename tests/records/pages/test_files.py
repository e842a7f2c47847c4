"""Problems of a practice's own pages that cannot be shown."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from PIL import Image

from recordgen.records.load.practice import read_practice
from tests.support.practice_folders import TODAY, build, practice

PAGE = "# Winter mud\n\nText.\n"


def picture(path: Path, **options: object) -> bytes:
    """The bytes of a small picture."""
    Image.new("RGB", (4, 3)).save(path, **options)  # type: ignore[arg-type]
    content = path.read_bytes()
    path.unlink()
    return content


def told(folder: Path, files: Mapping[str, str | bytes | None]) -> list[str]:
    """The problems of a practice with these files, each as a line without the name of the folder."""
    _, problems = read_practice(build(folder, files), TODAY)
    return [problem.as_line().removeprefix(f"{folder.name}/") for problem in problems]


def test_pages_are_read_from_the_practice_and_the_stable(tmp_path: Path) -> None:
    """Each with its title and the pictures beside it, in the order of their names."""
    jpeg = picture(tmp_path / "x.jpg")
    files: dict[str, str | bytes | None] = {
        "pages/winter-mud.md": PAGE,
        "pages/a-gate.md": "# The gate\n\n![A gate](gate.jpg)\n",
        "pages/gate.jpg": jpeg,
        "willowmere/pages/lane.md": "# The lane\n\n[Mud](winter-mud.md) [call](tel:07700900142) [a](safety.md#call)\n",
    }
    found = practice(tmp_path, files)

    assert [page.text.title for page in found.pages.pages] == ["The gate", "Winter mud"]
    assert [path.name for path in found.pages.pictures] == ["gate.jpg"]
    assert [page.name for page in found.stables[0].pages.pages] == ["lane"]


@pytest.mark.parametrize(
    ("files", "line"),
    [
        ({"pages/mud.md": "\n\nText.\n"}, "pages/mud.md:3:1: error: the page has no title. Begin it with"),
        ({"pages/mud.md": ""}, "pages/mud.md:1:1: error: the file is empty."),
        ({"pages/mud.md": "# A\n\n# B\n"}, "pages/mud.md:3:1: error: a second title stands here: 'B'. Begin"),
        ({"pages/mud.md": b"# A\n\nM\xfccke"}, "pages/mud.md:3:2: error: this is not UTF-8 text."),
        ({"pages/mud.md": "# A\n" + "mud " * 1_250_000}, "pages/mud.md:1:1: error: the file is larger than 50 kB."),
        ({"pages/mud.md": "# A\n\n" + "[" * 40_000}, "pages/mud.md:3:1: error: brackets, lists or quotes"),
        ({"pages/mud.md": "# A\n\n" + "a\n: b\n" * 8_000}, "pages/mud.md:1:1: error: brackets, lists or quotes"),
        ({"pages/mud.md": "# A\n\n<<<<<<< ours\n"}, "pages/mud.md:3:1: error: a merge of two versions was"),
        ({"pages/mud.md": "# A\u202eb\n"}, "pages/mud.md:1:1: error: a sign in the title does not show."),
        ({"pages/Mud Time.md": PAGE}, "pages/Mud Time.md:1:1: error: 'Mud Time.md' cannot be part of an address."),
        ({"pages/mud.MD": PAGE}, "pages/mud.MD:1:1: error: 'mud.MD' cannot be part of an address."),
        ({"pages/safety.md": PAGE}, "pages/safety.md:1:1: error: the name safety is taken by a page of every site."),
        ({"pages/notes.txt": "x"}, "pages/notes.txt:1:1: warning: this is neither a page nor a picture"),
        ({"pages/gate.jpg": b"x"}, "pages/gate.jpg:1:1: error: this is no picture."),
        ({"pages/gate.jpg": b"\xff\xd8\xff" + bytes(3_000_000)}, "pages/gate.jpg:1:1: error: the file is larger"),
    ],
)  # fmt: skip
def test_bad_input_gets_a_sentence_with_file_and_line(
    tmp_path: Path, files: dict[str, str | bytes | None], line: str
) -> None:
    """One problem for one slip, wherever it is."""
    found = told(tmp_path, files)

    assert len(found) == 1
    assert found[0].startswith(line)


@pytest.mark.parametrize(
    ("link", "message"),
    [
        ("[a](https://example.org/x)", "this link leads out of the site: 'https://example.org/x'"),
        ("<https://example.org>", "this link leads out of the site: 'https://example.org'"),
        ("[a](//example.org)", "this link leads out of the site"),
        ("[a](../practice/index.html)", "this link leads out of the site"),
        ("[a](javascript:alert)", "this link leads out of the site"),
        ("[a](java&#115;cript&#58;alert)", "there is no page"),
        ("[a](data:text/html,x)", "this link leads out of the site"),
        ("[a][b]\n\n[b]: http://example.org", "this link leads out of the site: 'http://example.org'"),
        ("[a](frost.md)", "there is no page 'frost.md' on this site. Those there are: mud.md, words.md, method.md"),
        ("[a](lane.md)", "there is no page 'lane.md' on this site"),
        ("[a](#frost)", "there is no heading '#frost' on that page. Those there are: wet"),
        ("![a](gate.jpg)", "there is no picture 'gate.jpg' beside this page. Those here: none"),
        ("![a](https://example.org/x.jpg)", "this picture lies outside: 'https://example.org/x.jpg'"),
        ("![a](data:image/svg+xml,x)", "this picture lies outside"),
    ],
)
def test_a_link_that_leads_out_or_nowhere_is_told(tmp_path: Path, link: str, message: str) -> None:
    """With the line it stands in; a stable's page is no page of every site."""
    files = {"pages/mud.md": f"# Mud\n\n## Wet\n\nText {link}\n", "willowmere/pages/lane.md": "# Lane\n"}
    found = told(tmp_path, files)

    assert len(found) == 1
    assert found[0].startswith(f"pages/mud.md:{7 if '[b]:' in link else 5}:1: error: {message}")


def test_two_of_one_name_or_title_are_told(tmp_path: Path) -> None:
    """On one site; two stables may each have theirs."""
    jpeg = picture(tmp_path / "x.jpg")
    files: dict[str, str | bytes | None] = {
        "pages/mud.md": "# Mud\n",
        "pages/gate.jpg": jpeg,
        "willowmere/pages/mud.md": "# Lane\n",
        "willowmere/pages/gate.jpg": jpeg,
        "willowmere/pages/wet.md": "\n# mud\n",
        "old-mill/stable.yaml": "name: Old Mill\n",
        "old-mill/pages/lane.md": "# Lane\n",
    }

    assert [line.partition(" this one")[0] for line in told(tmp_path, files)] == [
        "willowmere/pages/gate.jpg:1:1: error: two files of one site are named gate.jpg:",
        "willowmere/pages/mud.md:1:1: error: two files of one site are named mud.md:",
        "willowmere/pages/wet.md:2:1: error: two pages of one site have the title 'mud':",
    ]


def test_a_link_to_a_page_that_is_wrong_is_not_told_as_well(tmp_path: Path) -> None:
    """One slip, one problem."""
    assert len(told(tmp_path, {"pages/mud.md": "# Mud\n\n[a](wet.md)\n", "pages/wet.md": "no title"})) == 1


def test_a_picture_that_tells_where_it_was_taken_is_refused(tmp_path: Path) -> None:
    """On a page as elsewhere."""
    exif = Image.Exif()
    exif[0x010F] = "a maker"
    found = told(tmp_path, {"pages/gate.jpg": picture(tmp_path / "x.jpg", exif=exif)})

    assert len(found) == 1
    assert "which may tell where, when and by whom it was taken" in found[0]


def test_a_link_out_of_the_records_is_not_followed(tmp_path: Path) -> None:
    """Neither as a page nor as the folder of pages."""
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "mud.md").write_text(PAGE)
    folder = build(tmp_path / "records", {"pages/wet.md": PAGE})
    (folder / "pages" / "mud.md").symlink_to(outside / "mud.md")
    (folder / "willowmere" / "pages").symlink_to(outside)
    found, problems = read_practice(folder, TODAY)

    assert found is None
    assert [one.message for one in problems] == ["this link leads out of the records"] * 2
