"""Stock on sale: round bar."""

from tommybar.facts.stock.bars import Bar, bars_sold, bright_bar_zones, ground_bar_zone

__all__ = ["Bar", "bars_sold", "bright_bar_zones", "ground_bar_zone"]
