"""Drawings of plates and blocks: views that share one datum corner, and a table of everything cut in them."""
