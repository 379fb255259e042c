"""Limits, fits, float loops, run-out and position stacks, measuring capability."""
