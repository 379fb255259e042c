"""Sizes for a scale and a shop."""

from tommybar.resize.resized import price_of, resize, second_choice
from tommybar.resize.table import Bind, Price, Resized, SizeRow

__all__ = ["Bind", "Price", "Resized", "SizeRow", "price_of", "resize", "second_choice"]
