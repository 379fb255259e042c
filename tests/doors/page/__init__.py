"""The page in Debian's Chromium, served as a person serves it."""
