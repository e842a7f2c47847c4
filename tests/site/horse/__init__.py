"""Tests of how a horse's page is arranged."""
