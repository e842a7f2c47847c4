"""How a traced line runs between its points."""
