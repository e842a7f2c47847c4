"""Care notes: the jobs in force, and suggestions for what was seen."""
