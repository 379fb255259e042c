"""Work of the hand: sheet bent, wire wound, outlines filed, and what is done at the bench afterwards."""
