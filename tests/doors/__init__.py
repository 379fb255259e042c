"""Tests of the doors: command line and pages."""
