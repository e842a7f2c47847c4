"""The file of a practice's own table of usual outlines of a sole, as `recordgen outlines` writes it."""

from __future__ import annotations

from recordgen.records.models.fields import Day, Record, Text, Whole, field


class OutlinesFile(Record):
    """A table of usual outlines; its name tells the hash of its numbers."""

    made: Day = field("the day it was made", ...)
    tracings: Whole = field("of how many traced soles", ...)
    wall: Text = field("the mean of the walls and their modes, in ten thousandths of the sole's size", ...)
    ring: Text = field("the same of how thick the walls are", ...)
