"""Fasteners and small standard parts: screws, nuts, washers, pins, keys, circlips, bearings, O-rings."""

from tommybar.facts.fasteners.bearings import Bearing, bearing, bearings_for_shaft
from tommybar.facts.fasteners.circlips import Circlip, circlip
from tommybar.facts.fasteners.clearance import CLEARANCES, clearance_hole
from tommybar.facts.fasteners.drivers import (
    HexagonKey,
    OpenSpanner,
    Screwdriver,
    SocketSpanner,
    hexagon_driver,
    hexagon_key,
    open_spanner,
    screwdriver,
    socket_spanner,
    stub_screwdriver,
)
from tommybar.facts.fasteners.keys import Key, key_for_shaft
from tommybar.facts.fasteners.nuts import Nut, Washer, nut, spanner_across_flats, washer
from tommybar.facts.fasteners.o_rings import ORing, ORingGroove, o_ring, o_ring_groove
from tommybar.facts.fasteners.pins import ParallelPin, parallel_pin, parallel_pin_diameters
from tommybar.facts.fasteners.screws import (
    SCREWS,
    ScrewHead,
    screw_head,
    screw_length_at_least,
    standard_screw_lengths,
)

__all__ = [
    "CLEARANCES",
    "SCREWS",
    "Bearing",
    "Circlip",
    "HexagonKey",
    "Key",
    "Nut",
    "ORing",
    "ORingGroove",
    "OpenSpanner",
    "ParallelPin",
    "ScrewHead",
    "Screwdriver",
    "SocketSpanner",
    "Washer",
    "bearing",
    "bearings_for_shaft",
    "circlip",
    "clearance_hole",
    "hexagon_driver",
    "hexagon_key",
    "key_for_shaft",
    "nut",
    "o_ring",
    "o_ring_groove",
    "open_spanner",
    "parallel_pin",
    "parallel_pin_diameters",
    "screw_head",
    "screw_length_at_least",
    "screwdriver",
    "socket_spanner",
    "spanner_across_flats",
    "standard_screw_lengths",
    "stub_screwdriver",
    "washer",
]
