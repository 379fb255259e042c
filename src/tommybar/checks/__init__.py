"""One check a file; each gives findings and never prints."""
