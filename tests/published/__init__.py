"""Outside figures: what books and standards print, run against the program."""
