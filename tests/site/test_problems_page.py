"""The page with the codes of problems, which the trimmer alone reads."""

from __future__ import annotations

from pathlib import Path

from tests.support.pages import soup
from tests.support.problem_examples import TABLE


def test_the_page_explains_every_code_with_its_example(demo_sites: Path) -> None:
    """Each can be linked to, and its lines stand there as they are typed."""
    page = soup(demo_sites / "practice" / "problems.html")
    told = {str(part["id"]): part.get_text() for part in page.select("details[id]")}

    assert list(told) == sorted(TABLE)
    assert [code for code, words in TABLE.items() if words.wrong and words.wrong not in told[code]] == []
    assert [code for code, words in TABLE.items() if words.right and words.right not in told[code]] == []


def test_the_front_page_of_the_trimmer_leads_there(demo_sites: Path) -> None:
    """Owners are not led there."""
    assert soup(demo_sites / "practice" / "index.html").select_one('a[href="problems.html"]')
    assert not (demo_sites / "willowmere" / "problems.html").exists()
