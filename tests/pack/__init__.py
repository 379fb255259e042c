"""Tests of the printed pack."""
