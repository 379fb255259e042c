"""A screw in a tapped sleeve is gripped at the blank that its die was run on."""

from pathlib import Path

import pytest

from tommybar.dryrun.keep_out import fixture
from tommybar.making.cards import Hold
from tommybar.shop import load_shop

SHOP = Path(__file__).resolve().parents[2] / "examples" / "shops" / "shop-r.yaml"


def test_a_screw_in_a_tapped_sleeve_is_held_at_its_blank():
    shop = load_shop(SHOP)
    held = Hold("split sleeve tapped M10", "inside jaws", "screw", 10.0, 9.0, 6.8, 0.05, "")
    # the blank for a die lies a tenth of the pitch below the major diameter: 10 - 0.15 (common practice)
    assert fixture(held, 1.0, shop).radius == pytest.approx((10 - 0.15) / 2, abs=0.01)
    plain = Hold("three-jaw, inside jaws", "inside jaws", "screw", 10.0, 9.0, 6.8, 0.05, "")
    assert fixture(plain, 1.0, shop).radius == pytest.approx(5.0)
