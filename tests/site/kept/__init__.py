"""Tests of the work of earlier builds."""
