"""One page of each kind in the sites of the demo, and the limits of what pages weigh."""

from __future__ import annotations

KINDS = {
    "trimmer's desk": "practice/index.html",
    "board": "willowmere/index.html",
    "jobs": "willowmere/jobs.html",
    "horse": "fallow-end/horses/otter.html",
    "traced horse": "tithe-barn/horses/dunlin.html",
    "heaviest horse": "willowmere/horses/pippin.html",
    "words": "willowmere/words.html",
    "method": "willowmere/method.html",
    "safety": "willowmere/safety.html",
    "problems": "practice/problems.html",
    "guide": "practice/user_guide/start.html",
    "guide's tasks": "practice/user_guide/tasks.html",
    "guide's commands": "practice/user_guide/commands.html",
    "own page": "practice/pages/before-we-come.html",
    "sheet": "willowmere/horses/moss_sheet.html",
    "none such": "willowmere/404.html",
}
SEARCH_INDEX = "search/index.js"
# What may be loaded beside the page itself before it is used, and what search may load.
MOST_FIRST_BYTES = 20_000
MOST_INDEX_BYTES = 120_000
