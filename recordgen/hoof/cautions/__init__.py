"""Welfare cautions: the rules that raise them, how they end, and their words."""
