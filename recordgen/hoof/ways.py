"""What everything is computed with: the practice's own ways, the tables, the measures and the naming."""

from __future__ import annotations

from dataclasses import dataclass

from recordgen.hoof.measures import Measure, measures_of
from recordgen.hoof.naming import Naming
from recordgen.records.horse import PracticeFile
from recordgen.records.names import CareClass
from recordgen.records.reference import ClassWords, Reference


@dataclass(frozen=True)
class Ways:
    """What summaries are made with: the practice's file, the tables, the measures and the naming."""

    practice: PracticeFile
    reference: Reference
    measures: tuple[Measure, ...]
    naming: Naming

    @classmethod
    def of(cls, practice: PracticeFile, reference: Reference) -> Ways:
        """The ways of a practice."""
        return cls(practice, reference, measures_of(reference), Naming.of(practice, reference.phrases))

    def group(self, name: CareClass) -> ClassWords:
        """What the table tells of a class of animals."""
        return self.reference.classes[name]

    @property
    def toe_reading_sd_mm(self) -> float:
        """Standard deviation of one reading of toe length, in the way this practice usually takes it."""
        toe = next(measure for measure in self.measures if measure.key == "toe_length")
        return float(toe.method(self.practice.methods).sd)
