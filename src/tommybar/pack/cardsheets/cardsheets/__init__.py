"""The printed card: one grip on A4, with the grip in section, the ladder of steps and boxes to write in."""

from tommybar.pack.cardsheets.page import Neighbours, card_sheets

__all__ = ["Neighbours", "card_sheets"]
