"""Jobs in force that are not done now, since an open caution speaks against them."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from recordgen.hoof.care.jobs import Job
from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.cautions.not_while import against


@dataclass(frozen=True)
class Withheld:
    """A job in force that is not done now, and the open cautions because of which it is not."""

    job: Job
    cautions: tuple[Caution, ...]


def withheld_of(jobs: Iterable[Job], cautions: Sequence[Caution]) -> tuple[Withheld, ...]:
    """The jobs that may not stand beside the open cautions, in their order."""
    found = ((job, against(job.not_while, cautions)) for job in jobs)
    return tuple(Withheld(job, because) for job, because in found if because)
