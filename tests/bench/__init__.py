"""Tests of builds in progress."""
