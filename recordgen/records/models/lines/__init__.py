"""Tell how a traced line runs between the points that were tapped: open `drawn.py` first."""
