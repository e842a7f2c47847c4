"""The fewest rounds on which every horse is visited inside its window."""
