"""Cuts against the table's travel."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tommybar.making.milling.edges import mill_to
from tommybar.making.milling.travel import cut_travel
from tommybar.shapes.features import Dim


@pytest.mark.parametrize(("long", "told"), [(200.0, []), (200.1, [451])])
def test_a_cut_takes_its_cutter_in_and_out(bench, long, told):
    """220 of travel: 200 + 16 + 2 x 2 = 220 just goes."""
    b = bench()
    cut_travel(b, long, 16.0, "width")

    assert [f.number for f in b.findings] == told


def test_an_edge_longer_than_the_table_travels_is_told(bench, shop):
    """120 of edge on a table of 100."""
    b = bench(replace(shop, mill=replace(shop.mill, travel_x=100.0)))
    mill_to(
        b,
        "Mill one long edge clean",
        41.0,
        Dim(40.0, "piece.width"),
        "width",
        1.0,
        measured=False,
        along=120.0,
    )

    assert [(f.number, f.severity, f.figure) for f in b.findings] == [(451, "caution", "140.0 mm")]
