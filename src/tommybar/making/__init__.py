"""Blanks, holding, route, tools, cuts, dials, coordinates."""
