"""tommybar: plan, size, make and publish small turned and milled mechanisms.

    from tommybar import load_design, load_made, load_shop, plan

Nothing heavy is imported until one of these is used.
"""

from __future__ import annotations

from importlib import import_module
from typing import Any

__version__ = "0.1.0"

_DOORS = {
    "load_design": "tommybar.design",
    "load_shop": "tommybar.shop",
    "load_made": "tommybar.made",
    "plan": "tommybar.plan",
    "Plan": "tommybar.plan",
    "Refusal": "tommybar.refusals",
}
__all__ = [*_DOORS]


def __getattr__(name: str) -> Any:
    if name in _DOORS:
        return getattr(import_module(_DOORS[name]), name)
    raise AttributeError(f"module 'tommybar' has no attribute {name!r}")
