"""Tests of what goes wrong: one file for each kind of trouble."""
