"""tommybar: plan, size, make and publish small turned and milled mechanisms."""

from tommybar.version import __version__

__all__ = ["__version__"]
