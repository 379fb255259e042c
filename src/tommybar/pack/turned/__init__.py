"""Sheets of turned parts: what is drawn, what is written of every feature, and where it finds room."""
