"""Tests of the sentences."""
