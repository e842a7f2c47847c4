"""The guide's outputs, taken by running its lines on a copy of the demo practice."""
