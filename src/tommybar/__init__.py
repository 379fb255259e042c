"""tommybar: plan, size, make and publish small turned and milled mechanisms.

    from tommybar import load_design, load_made, load_shop, plan

Nothing heavy is imported until one of these is used.
"""

from __future__ import annotations

from importlib import import_module
from typing import Any

from tommybar.version import __version__

_DOORS = {
    "load_design": "tommybar.design",
    "load_shop": "tommybar.shop",
    "load_made": "tommybar.made",
    "plan": "tommybar.planning",
    "Plan": "tommybar.planning",
    "Refusal": "tommybar.refusals",
}
__all__ = ["Plan", "Refusal", "__version__", "load_design", "load_made", "load_shop", "plan"]


def __getattr__(name: str) -> Any:
    if name in _DOORS:
        return getattr(import_module(_DOORS[name]), name)
    raise AttributeError(f"module 'tommybar' has no attribute {name!r}")
