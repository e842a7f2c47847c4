"""How other languages write days, numbers and lists, and what their catalogs hold."""
