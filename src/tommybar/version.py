"""The program's version, for whoever stamps a plan or a sheet with it."""

__version__ = "0.1.0"
