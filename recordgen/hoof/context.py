"""The context that everything is computed with: the practice's own ways, the tables, the measures and the naming."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from recordgen.hoof.measures.measures import Measure, measures_of
from recordgen.hoof.measures.repeatability import Own, Way, own_errors, with_own
from recordgen.hoof.measures.rounding import rounding_steps, with_rounding
from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.errors.twice import own_hand_times
from recordgen.hoof.tracing.figures import Reckon, reckoned
from recordgen.public_holidays import OfYear, PublicHolidays, of_year
from recordgen.records.models.names import CareClass
from recordgen.records.models.reference import ClassWords, Reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.tracing import HAND_ERROR
from recordgen.records.models.visit import Visit


@dataclass(frozen=True)
class Context:
    """The context that summaries are made with: the practice's file, the tables, the measures and the naming.

    reckon: finds the figures of a tracing; left out, they are reckoned each time. public: the public holidays here.
    hand_times: how much larger the error of the practice's hands is than its tracings tell.
    """

    practice: PracticeFile
    reference: Reference
    measures: tuple[Measure, ...]
    naming: Naming
    reckon: Reckon = reckoned
    public: PublicHolidays = field(default_factory=PublicHolidays)
    hand_times: float = 1.0

    @classmethod
    def of(
        cls,
        practice: PracticeFile,
        reference: Reference,
        repeated: Sequence[Visit] = (),
        reckon: Reckon = reckoned,
        holidays: OfYear = of_year,
        errors: Mapping[Way, Own] | None = None,
        hand_times: float | None = None,
    ) -> Context:
        """The ways of a practice.

        repeated: the visits that tell how well its readings repeat. errors, hand_times: what they tell of readings and
        of the hands that trace, where it is known already.
        """
        own = own_errors(reference, practice.methods, repeated) if errors is None else errors
        tables = with_own(reference, own) if own else reference
        times = own_hand_times(repeated, hand_error_of(practice)) if hand_times is None else hand_times
        public = PublicHolidays(practice.country, practice.region, practice.language, holidays)
        naming = Naming.of(practice, tables.phrases)
        return cls(practice, tables, measures_of(tables), naming, reckon, public, times)

    def with_rounding_of(self, visits: Sequence[Visit]) -> Context:
        """The same with the rounding seen in the figures of some visits, those of one horse, in every error."""
        steps = rounding_steps(self.measures, self.practice.methods, visits)
        tables = with_rounding(self.reference, steps)
        return replace(self, reference=tables, measures=measures_of(tables))

    def group(self, name: CareClass) -> ClassWords:
        """The table's entry for a class of animals."""
        return self.reference.classes[name]

    @property
    def hand_error(self) -> float:
        """The error of its hand, as `hand_error_of` tells it."""
        return hand_error_of(self.practice)

    @property
    def toe_reading_sd_mm(self) -> float:
        """Standard deviation of one reading of toe length, in the way this practice usually takes it."""
        toe = next(measure for measure in self.measures if measure.key == "toe_length")
        return float(toe.method(self.practice.methods).sd)


def hand_error_of(practice: PracticeFile) -> float:
    """SD of one point picked on a picture, in px at an image 1000 px wide: the practice's own, or the usual one."""
    return HAND_ERROR if practice.hand_error is None else practice.hand_error
