"""Facts of the drawing office: general tolerances, edges, preferred numbers, sheets, lines, finish."""
