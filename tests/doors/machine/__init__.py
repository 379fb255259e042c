"""The file for the machine, in a browser."""
