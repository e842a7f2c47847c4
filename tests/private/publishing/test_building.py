"""Names of pages that tell nothing, and places that stables do not share."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.private.publishing import build as building
from recordgen.private.publishing.address import needs_https, origin, refuse_inside, refuse_shared, sharing_origin
from recordgen.private.publishing.build import neutral_names
from recordgen.problems import Trouble
from recordgen.records.models.stable import Branch, Publish

SECRET = bytes(range(32))
HORSES = ["bramble", "fennel", "moss"]


def to(address: str, folder: str = "x") -> Publish:
    """A stable published into a folder."""
    return Publish(address=address, to=folder)


def test_a_horses_name_is_the_same_each_time_and_another_with_another_secret() -> None:
    """So bookmarks last, and nobody without the secret can guess a horse."""
    first, again, other = (neutral_names(secret, HORSES) for secret in (SECRET, SECRET, bytes(32)))

    assert [first(horse) for horse in HORSES] == [again(horse) for horse in HORSES]
    assert all(re.fullmatch("[a-z2-7]{6}", first(horse)) for horse in HORSES)
    assert {first(horse) for horse in HORSES} & {other(horse) for horse in HORSES} == set()


def test_a_new_horse_changes_no_other_name() -> None:
    """Names do not depend on who else is there."""
    assert neutral_names(SECRET, [*HORSES, "otter"])("moss") == neutral_names(SECRET, HORSES)("moss")


def test_two_horses_never_share_a_page(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where short names meet, longer ones are taken."""
    monkeypatch.setattr(building, "LETTERS", 1)
    many = [f"horse-{number}" for number in range(40)]
    named = neutral_names(SECRET, many)

    assert len({named(horse) for horse in many}) == 40


@pytest.mark.parametrize(
    ("address", "refused"),
    [
        ("https://a.example/", False),
        ("http://a.example/", True),
        ("http://localhost:8000/", False),
        ("http://127.0.0.1/", False),
        ("http://localhost.example/", True),
    ],
)
def test_browsers_open_sealed_sites_over_https_or_on_this_machine(address: str, refused: bool) -> None:
    """Source: W3C, Secure Contexts, section 3.1."""
    assert needs_https(address) is refused


def test_one_origin_is_scheme_host_and_port() -> None:
    """A usual port may be left out. Source: RFC 6454, section 4."""
    assert origin("https://a.example/one/") == origin("https://A.example:443/two/")
    assert (
        len({origin(address) for address in ("https://a.example/", "http://a.example/", "https://b.a.example/")}) == 3
    )


def test_stables_of_one_origin_are_named() -> None:
    """A key kept in a browser for one can be used by the other."""
    others = {"mill": to("https://a.example/mill/"), "lea": to("https://b.example/")}

    assert sharing_origin(to("https://a.example/w/"), others) == ["mill"]


@pytest.mark.parametrize(
    ("one", "other", "shared"),
    [
        (to("https://a.example/", "p"), to("https://b.example/", "q/../p"), True),
        (to("https://a.example/", "p"), to("https://b.example/", "q"), False),
        (to("https://a.example/", "p"), to("https://a.example:443", "q"), True),
        (to("https://a.example/w/", "p"), to("https://a.example/", "q"), False),
    ],
)
def test_two_stables_do_not_share_a_folder_or_an_address(one: Publish, other: Publish, shared: bool) -> None:
    """However it is spelled."""
    assert is_refused(one, other) is shared


@pytest.mark.parametrize(
    ("remote", "branch", "shared"),
    [
        ("git@git.example.org:wren/sites.git", "w", True),
        ("https://git.example.org/wren/sites", "w", True),
        ("https://git.example.org/wren/sites", "mill", False),
        ("https://git.example.org/wren/other", "w", False),
    ],
)
def test_two_stables_do_not_share_a_branch(remote: str, branch: str, shared: bool) -> None:
    """Two branches of one repository are two places."""
    ours = Publish(
        address="https://a.example/", git=Branch(remote="https://git.example.org/wren/sites.git", branch="w")
    )
    theirs = Publish(address="https://b.example/", git=Branch(remote=remote, branch=branch))

    assert is_refused(ours, theirs) is shared


def is_refused(one: Publish, other: Publish) -> bool:
    """Whether a stable may not be published beside another."""
    try:
        refuse_shared(one, {"mill": other}, Path("/records"))
    except Trouble:
        return True
    return False


@pytest.mark.parametrize(
    ("folder", "refused"), [("records/x", True), (".", True), ("records", True), ("records2", False)]
)
def test_a_served_folder_lies_apart_from_the_records(tmp_path: Path, folder: str, refused: bool) -> None:
    """Neither in them nor around them."""
    (tmp_path / "records").mkdir()
    if refused:
        with pytest.raises(Trouble, match="does not lie apart from the records"):
            refuse_inside((tmp_path / folder).resolve(), tmp_path / "records")
    else:
        refuse_inside((tmp_path / folder).resolve(), tmp_path / "records")
