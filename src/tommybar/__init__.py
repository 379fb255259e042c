"""tommybar: plan, size, make and publish small turned and milled mechanisms."""

__version__ = "0.1.0"
