"""Sheets and documents; one writer a file."""
