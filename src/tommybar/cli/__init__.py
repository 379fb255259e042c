"""The command line: a door without arithmetic."""
