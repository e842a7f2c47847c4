"""Takes new messages into the catalogs of all languages, and names how many of each lack words."""

from __future__ import annotations

from recordgen.language.catalogs import catalogs_folder
from tests.catalogs import DOMAINS, held, path_of, renewed


def main() -> None:
    """Write each catalog anew; what was translated stays as long as its English does."""
    for code in sorted(path.name for path in catalogs_folder().iterdir() if path.is_dir()):
        for domain in DOMAINS:
            path_of(code, domain).write_text(renewed(code, domain), "utf-8")
            lacking = sum(1 for one in held(code, domain) if one.id and not one.string)
            print(f"{code}/{domain}.po: {lacking} messages lack words")


if __name__ == "__main__":
    main()
