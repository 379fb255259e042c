"""Sizes for a scale and a shop."""
