"""Tests against published sources."""
