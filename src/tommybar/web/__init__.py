"""The page: a door without arithmetic."""
