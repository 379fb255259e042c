"""The sheets in front of the drawings and cards: cover, sizes, stock, tools, fits, findings."""
