"""Traced feet to scale: soles, walls, the ring unrolled."""
