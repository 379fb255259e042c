"""The file for the machine: one HTML page that holds the whole route."""

from tommybar.pack.machine.write import write_machine_file

__all__ = ["write_machine_file"]
