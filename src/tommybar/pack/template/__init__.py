"""Marking-out templates: the face of a plate at 1:1 on paper, to be glued on the metal."""
