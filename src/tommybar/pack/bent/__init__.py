"""Drawings of sheet metal, rolled rings, springs and bent wire: blank or wire first, then what it becomes."""
