"""Holes on a circle: coordinates in both handbook conventions, and chords."""

from tommybar.facts.circles.chords import chord
from tommybar.facts.circles.holes import CENTRE, CORNER, Hole, hole_circle

__all__ = ["CENTRE", "CORNER", "Hole", "chord", "hole_circle"]
