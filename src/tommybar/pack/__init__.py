"""Sheets and documents; one writer a file."""

from tommybar.pack.write import write_pack

__all__ = ["write_pack"]
