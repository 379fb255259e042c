"""Room of keys, spanners and screwdrivers: figures that were seen, and what must hold between tables."""

from __future__ import annotations

import math

import pytest

from tommybar.facts.fasteners import (
    SCREWS,
    hexagon_driver,
    hexagon_key,
    nut,
    open_spanner,
    screw_head,
    screwdriver,
    socket_spanner,
    stub_screwdriver,
)
from tommybar.refusals import Refusal

SIZES = ("M1.6", "M2", "M2.5", "M3", "M4", "M5", "M6", "M8", "M10", "M12", "M16")


@pytest.mark.parametrize(
    ("across", "corners", "long", "short"),
    [(1.5, 1.68, 46.5, 15.5), (3.0, 3.39, 66.0, 23.0), (6.0, 6.81, 96.0, 38.0), (10.0, 11.37, 122.0, 50.0)],
)
def test_hexagon_keys_as_printed(across, corners, long, short):
    """JIS B 4648:2008, which has the figures of ISO 2936, standard length (seen in a public excerpt)."""
    one = hexagon_key(across)
    assert (one.corners, one.long, one.short) == (corners, long, short)


@pytest.mark.parametrize("standard", SCREWS)
def test_every_socket_of_the_tables_has_its_key(standard):
    """A key is a little under a sharp hexagon across its corners (2 / sqrt 3 = 1.155), and its head is wider."""
    for size in SIZES:
        try:
            head = screw_head(standard, size)
        except Refusal:
            continue
        if standard == "ISO 4017" or head.key is None:
            assert head.socket == 0.0
            continue
        key = hexagon_key(head.key)
        assert 1.08 * head.key <= key.corners <= 2 / math.sqrt(3) * head.key
        assert 0 < head.socket < key.short
        assert standard == "ISO 4026" or key.corners < head.diameter


@pytest.mark.parametrize(("size", "depth"), [("M3", 1.3), ("M5", 2.5), ("M6", 3.0), ("M12", 6.0)])
def test_sockets_of_cap_screws_as_printed(size, depth):
    """ISO 4762, t min (seen in public tables)."""
    assert screw_head("ISO 4762", size).socket == depth


@pytest.mark.parametrize("across", [5.5, 8.0, 10.0, 13.0, 16.0, 24.0])
def test_spanners_go_round_their_hexagon(across):
    """Jaws and sockets are wider than the corners, and the jaws not wider than ISO 3318 lets them be (from memory)."""
    spanner, socket = open_spanner(across), socket_spanner(across)
    corners = 2 * across / math.sqrt(3)
    assert corners < socket.outside < spanner.width <= 2.1 * across + 7
    assert across / (2 * math.sqrt(3)) < spanner.mouth < spanner.width / 2  # past the corner, inside the head


@pytest.mark.parametrize("standard", ["ISO 1207", "ISO 2009"])
def test_a_screwdriver_is_no_wider_than_its_head(standard):
    """The tip stays inside the slot's ends."""
    for size in ("M2", "M3", "M4", "M5", "M6", "M8", "M10"):
        assert screwdriver(size).tip < screw_head(standard, size).diameter
        assert stub_screwdriver(size).blade < screwdriver(size).blade


def test_what_no_table_has_is_refused():
    """No key of 7.5, no spanner of 2 or 50, no screwdriver for M20."""
    for ask in (
        lambda: hexagon_key(7.5),
        lambda: hexagon_driver(7.5),
        lambda: open_spanner(2.0),
        lambda: socket_spanner(50.0),
        lambda: screwdriver("M20"),
    ):
        with pytest.raises(Refusal):
            ask()


def test_a_nut_has_the_spanner_of_its_flats():
    """Every nut of the tables lies in the range of spanners and sockets."""
    for size in ("M1.6", "M3", "M5", "M8", "M16", "M20"):
        assert open_spanner(nut(size).across_flats).width > nut(size).across_flats
