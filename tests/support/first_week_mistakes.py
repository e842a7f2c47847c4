"""Sixty-six mistakes of a first week with records: what was typed or run, and the way out that is told.

A trimmer who is no programmer made each of them plausible: typing slips, forms of other countries, a word processor,
files that another program named. The list is a judgement.
"""

from __future__ import annotations

from dataclasses import dataclass

from tests.support.practice_folders import FILES, VISIT_FILE

PRACTICE, STABLE, HORSE = "practice.yaml", "willowmere/stable.yaml", "willowmere/bramble/horse.yaml"
_PRACTICE, _STABLE, _HORSE, _DAY = FILES[PRACTICE], "name: Willowmere\n", "name: Bramble\n", "date: 2026-10-14\n"
_FOOT = f"{_DAY}feet:\n  left_fore:\n    "
BESIDE = "willowmere/bramble/"


@dataclass(frozen=True)
class Typed:
    """A mistake in a file: what the file holds, and line, a part of the message, and the way out that are told."""

    file: str
    text: str | bytes
    line: int
    message: str
    way_out: str


@dataclass(frozen=True)
class Run:
    """A mistake in a command: its words, how it ends, and what is told. {} stands for a folder beside the records."""

    words: tuple[str, ...]
    code: int
    told: str


TYPED = (
    # The practice and the stable
    Typed(PRACTICE, "name: Hazel Hoof Care\ntrimmer: Your name\n", 2, "left to be filled in", "Write trimmer:"),
    Typed(PRACTICE, "name: Hazel Hoof Care\ntrimer: Wren\n", 2, "'trimer' is not a known key", "Did you mean trimmer?"),
    Typed(PRACTICE, "name: Hazel: Hoof Care\ntrimmer: Wren\n", 1, "a second colon", 'Write name: "Hazel: Hoof Care"'),
    Typed(PRACTICE, f"{_PRACTICE}working_days: Monday, Tuesday\n", 3, "a list", "Write working_days: [mon, tue]"),
    Typed(PRACTICE, f"{_PRACTICE}country: Germany\n", 3, "two capital letters", "Write it like GB, DE or US"),
    Typed(PRACTICE, f"{_PRACTICE}usual_weeks: 6\n", 3, "keys with values", "Write usual_weeks: {adult: 6}"),
    Typed(
        *(PRACTICE, f"{_PRACTICE}holidays: 24.12.2026 - 2.1.2027\n", 3, "should be a list"),
        "Write holidays: [2026-12-24 to 2027-01-02]",
    ),
    Typed(STABLE, f"{_STABLE}contacts: Mara Tilling\n", 2, "a list", "Write contacts: [{name: Mara Tilling}]"),
    Typed(
        STABLE, f"{_STABLE}phone: 07700 900356\n", 2, "'phone' is not a known key", "Write it like contacts: [{name:"
    ),
    Typed(
        *(STABLE, f"{_STABLE}publish: {{address: www.example.org, to: ../served}}\n", 2, "not the address of a site"),
        "Write it like https://",
    ),
    # The horse
    Typed(HORSE, "Name: Bramble\n", 1, "'Name' is not a known key", "Did you mean name?"),
    Typed(HORSE, f"{_HORSE}age: 11\n", 2, "'age' is not a known key", "Write the year of birth, such as born: 2015"),
    Typed(HORSE, f"{_HORSE}born: 12.05.2015\n", 2, "is not a date", "Write born: 2015-05-12"),
    Typed(HORSE, f"{_HORSE}born: 5/12/2015\n", 2, "is not a date", "Write 2015-12-05 or 2015-05-12"),
    Typed(HORSE, f"{_HORSE}born: about 2015\n", 2, "is not a date", "Write born: 2015"),
    Typed(HORSE, f"{_HORSE}height: 12.2\n", 2, "12.2 is not possible", "Write height: 12.2 hh"),
    Typed(HORSE, f"{_HORSE}height: 1,48 m\n", 2, "a comma stands in it", "Write height: 1.48 m"),
    Typed(HORSE, f"{_HORSE}height: 14.5 hh\n", 2, "a hand has four inches", "like 14.2 hh"),
    Typed(HORSE, f"{_HORSE}kind: mare\n", 2, "'mare' is not one of the words", "Write sex: mare"),
    Typed(HORSE, f"{_HORSE}kind: foal\n", 2, "a foal is told by its birth", "born: May 2026"),
    Typed(HORSE, f"{_HORSE}left: died\n", 2, "keys with values", "Write left: {date: …, why: died}"),
    Typed(HORSE, f"{_HORSE}consent: yes\n", 2, "keys with values", "Write consent: {vet: yes, by: …, date: …}"),
    Typed(HORSE, f"{_HORSE}owner: Jonah Peake\n", 2, "keys with values", "Write owner: {name: Jonah Peake}"),
    Typed(HORSE, f"{_HORSE}microchip: 96800000453123\n", 2, "this has 14", "Compare it with the passport"),
    # The visit
    Typed(VISIT_FILE, "date: 14.10.2026\n", 1, "is not a date", "Write date: 2026-10-14"),
    Typed(VISIT_FILE, "date: 10/14/2026\n", 1, "is not a date", "Write date: 2026-10-14"),
    Typed(VISIT_FILE, "date: 2026-10-15\n", 1, "but the file is named 2026-10-14", "Correct one of the two"),
    Typed(VISIT_FILE, f"{_DAY}next: 6 weeks\n", 2, "keys with values", "Write next: {weeks: 6}"),
    Typed(VISIT_FILE, f"{_DAY}next: 25.11.2026\n", 2, "keys with values", "Write next: {date: 2026-11-25}"),
    Typed(VISIT_FILE, f"{_DAY}lameness: AAEP 2\n", 2, "its scale", "Write lameness: {scale: AAEP, grade: 2}"),
    Typed(VISIT_FILE, f"{_DAY}notes: Calm\n", 2, "'notes' is not a known key", "Did you mean note?"),
    Typed(VISIT_FILE, f"{_DAY}note:Calm\n", 2, "a space is missing", "Write note: Calm"),
    Typed(VISIT_FILE, f"{_DAY}note: Stall: wet\n", 2, "a second colon", 'Write note: "Stall: wet"'),
    Typed(VISIT_FILE, f"{_DAY}note: “Calm: today”\n", 2, "a second colon", 'Write note: "Calm: today"'),
    Typed(VISIT_FILE, f"{_DAY}note: 'It's calm'\n", 2, "the quote here ends the text", 'Write note: "It\'s calm"'),
    Typed(VISIT_FILE, f"{_DAY}care: dry-bed, daily-grooves\n", 2, "a list", "Write care: [dry-bed, daily-grooves]"),
    Typed(VISIT_FILE, f"{_DAY}care:\n• dry-bed\n", 3, "a list is written with dashes", "Write - dry-bed"),
    Typed(VISIT_FILE, f"{_DAY}left_fore: {{landing: flat}}\n", 2, "not a known key", "It belongs under feet:"),
    Typed(VISIT_FILE, f"{_DAY}feet:\n  front left: {{landing: flat}}\n", 3, "none of the names", "mean left_fore?"),
    Typed(VISIT_FILE, f"{_DAY}feet:\n\tLF: {{landing: flat}}\n", 3, "a tab stands here", "Indent with spaces"),
    Typed(VISIT_FILE, f"{_DAY}feet:\n  LF:\n  landing: flat\n", 4, "none of the names", "Indent it two more"),
    Typed(VISIT_FILE, f"{_FOOT}before: {{toe: 86}}\n", 4, "'toe' is not a known key", "Write toe_length: 86"),
    Typed(VISIT_FILE, f"{_FOOT}before: {{toe_length: 8.6}}\n", 4, "not possible", "Write toe_length: 8.6 cm"),
    Typed(VISIT_FILE, f"{_FOOT}before: {{toe_length: 3 3/8}}\n", 4, "not possible", "Write toe_length: 3 3/8 in"),
    Typed(VISIT_FILE, f"{_FOOT}before: {{toe_length: 86,5}}\n", 4, "'5' is not a known key", "write toe_length: 86.5"),
    Typed(VISIT_FILE, f"{_FOOT}before: {{toe_length: ca. 86}}\n", 4, "not a number", "Write toe_length: 86"),
    Typed(VISIT_FILE, f"{_FOOT}before: toe_length: 86\n", 4, "a second colon", "Write before: {toe_length: 86}"),
    Typed(
        *(VISIT_FILE, f"{_FOOT}before: {{heel_height: 33/32}}\n", 4, "keys with values"),
        "Write heel_height: {medial: 33, lateral: 32}",
    ),
    Typed(VISIT_FILE, f"{_FOOT}frog: {{thrush: surface}}\n", 4, "'thrush' is not", "Write infection: surface"),
    Typed(VISIT_FILE, f"{_FOOT}sole: bruised\n", 4, "keys with values", "Write sole: {bruise: yes}"),
    Typed(VISIT_FILE, f"{_FOOT}wall: {{quarter: {{flare: 5}}}}\n", 4, "none", "medial quarter or lateral quarter?"),
    # How the file was saved
    Typed(VISIT_FILE, f"{_DAY}note: Calm\n".encode("utf-16"), 1, "saved as UTF-16", "save it as plain text (UTF-8)"),
    Typed(VISIT_FILE, f"{_DAY}note: Müde\n".encode("latin-1"), 2, "not UTF-8 text", "Save the file as UTF-8"),
    Typed(VISIT_FILE, b"PK\x03\x04\x14\x00", 1, "a document of a word processor", "save it as plain text (UTF-8)"),
    Typed(f"{BESIDE}2026-10-20.yaml.txt", _DAY, 1, "this file is not read", "Name it 2026-10-20.yaml"),
    Typed(f"{BESIDE}20-10-2026.yaml", _DAY, 1, "this file is not read", "Name it 2026-10-20.yaml"),
    Typed("willowmere/Moss/horse.yaml", "name: Moss\n", 1, "cannot be part of an address", "such as moss"),
    Typed("willowmere/moss/horse.yaml", "name: Bramble\n", 1, "the name 'Bramble' stands in", "Tell the two apart"),
)

RUN = (
    Run(("int", "{}/new"), 2, "Did you mean init?"),
    Run(("visit", "brambel"), 2, "Did you mean willowmere/bramble?"),
    Run(("visit", "bramble", "--date", "25.11.2026"), 2, "write it 2026-11-25"),
    Run(("visit", "bramble", "--date", "2126-01-01"), 2, "still to come. Begin a visit on its day"),
    Run(("photo", "bramble", "{}", "--foot", "RH", "--view", "sole"), 1, "is a folder. Name the pictures in it."),
    Run(("check", "bramble"), 1, "bramble is a horse at willowmere; name that stable"),
    Run(("correct", "bramble", "14.10.2026", "--because", "misread"), 1, "Write the day as its file: 2026-10-14"),
    Run(("readers", "willowmere", "--add", "Mara"), 1, "Publish it: recordgen publish willowmere"),
)
