"""Tests of pages and sites."""
