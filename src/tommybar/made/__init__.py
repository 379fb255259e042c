"""What has really been made: measured sizes, steps done, and new limits of mates."""

from tommybar.made.loading import load_made
from tommybar.made.record import Made
from tommybar.made.retarget import as_measured, retarget
from tommybar.made.writing import append_entry, write_measured

__all__ = ["Made", "append_entry", "as_measured", "load_made", "retarget", "write_measured"]
