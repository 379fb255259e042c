"""The demonstrator planned for the example shops, once a session."""

from __future__ import annotations

from pathlib import Path

import pytest

from tommybar.design import load_design
from tommybar.planning import Plan, plan
from tommybar.shop import load_shop

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"


def planned(shop: str) -> Plan:
    """The demonstrator in one of the example shops."""
    return plan(
        load_design(EXAMPLES / "demonstrator" / "design.yaml"), load_shop(EXAMPLES / "shops" / f"{shop}.yaml")
    )


@pytest.fixture(scope="session")
def in_shop_r() -> Plan:
    """The demonstrator in shop R."""
    return planned("shop-r")


@pytest.fixture(scope="session")
def in_small_shop() -> Plan:
    """The demonstrator in the small shop, where it must be resized or refused with stops."""
    return planned("small-bench")
