"""Blanks onto the rack and onto what can be bought."""
