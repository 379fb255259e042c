"""Views of solids: which edges are seen from one side, which are hidden, and what a section cuts."""
