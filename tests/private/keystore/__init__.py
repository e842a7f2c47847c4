"""Tests of `recordgen/private/keystore`."""
