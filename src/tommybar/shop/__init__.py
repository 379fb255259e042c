"""The shop file and its questions: does this jaw hold it, does this tool reach?"""

from tommybar.shop.examples import example_shops
from tommybar.shop.loading import load_shop

__all__ = ["example_shops", "load_shop"]
