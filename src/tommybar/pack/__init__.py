"""Sheets and documents; one writer a file. ``pack.write`` writes all of them."""
