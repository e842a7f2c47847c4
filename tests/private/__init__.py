"""Tests of sealing, keys, publishing and sharing."""
