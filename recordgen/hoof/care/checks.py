"""Remarks about the care notes of the last visit: those withheld, run out, or unchecked."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from recordgen.hoof.care.jobs import Job
from recordgen.hoof.care.withheld import Withheld
from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.context import Context
from recordgen.hoof.naming import Naming
from recordgen.hoof.remarks import Remark
from recordgen.problems import Step
from recordgen.records.models.care_in_force import run_out
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import Visit, alike


def care_checks(
    horse: Horse,
    visits: Sequence[Visit],
    jobs: Sequence[Job],
    withheld: Sequence[Withheld],
    opened: Sequence[Caution],
    ways: Context,
) -> Iterator[Remark]:
    """The remarks on the care notes in force after the last visit; none for a horse that has left.

    visits: oldest first. jobs: in force after the last of them. withheld: those of the jobs that wait. opened: the
    cautions that are open after it.
    """
    if horse.left or not visits:
        return
    for one in withheld:
        yield _withheld(one, visits, ways.naming)
    for job in jobs:
        yield from _own_words(job, visits, opened, ways.naming)
    for ended in run_out(visits, ways.reference.care):
        text = ways.naming.phrase("care_run_out", note=ended.note.what)
        yield Remark(len(visits) - 1, (), "care-run-out", text, ways.naming.phrase("care_run_out_way_out"))


def _withheld(one: Withheld, visits: Sequence[Visit], naming: Naming) -> Remark:
    open_ones = naming.listed(list(dict.fromkeys(_caution_name(caution, naming) for caution in one.cautions)))
    text = naming.phrase("care_withheld", note=one.job.key, cautions=open_ones)
    return Remark(
        len(visits) - 1, _steps(one.job, visits[-1]), "care-withheld", text, naming.phrase("care_withheld_way_out")
    )


def _own_words(job: Job, visits: Sequence[Visit], opened: Sequence[Caution], naming: Naming) -> Iterator[Remark]:
    """A job in the trimmer's own words beside a call to the vet: nothing here can tell whether it may stand."""
    urgent = [caution for caution in opened if caution.level == "call now"]
    if job.key or not urgent:
        return
    text = naming.phrase("care_own_words", note=job.what, caution=_caution_name(urgent[0], naming))
    yield Remark(
        len(visits) - 1,
        _steps(job, visits[-1]),
        "care-own-words-beside-caution",
        text,
        naming.phrase("care_own_words_way_out"),
    )


def _caution_name(caution: Caution, naming: Naming) -> str:
    return f"{caution.rule} ({naming.foot(caution.foot)})" if caution.foot else caution.rule


def _steps(job: Job, visit: Visit) -> tuple[Step, ...]:
    """The place of a job in the visit; nothing where it was given before."""
    names = [alike(note.what) for note in visit.care]
    name = alike(job.key or job.what)
    return ("care", names.index(name)) if name in names else ()
