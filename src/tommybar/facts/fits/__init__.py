"""Limits and fits of the standards: ISO 286 in micrometres, ANSI B4.1 in thousandths of an inch."""
