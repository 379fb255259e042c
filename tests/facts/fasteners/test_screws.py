"""Screws, nuts, washers and their holes."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tommybar.facts.fasteners import (
    CLEARANCES,
    SCREWS,
    clearance_hole,
    nut,
    screw_head,
    screw_length_at_least,
    spanner_across_flats,
    standard_screw_lengths,
    washer,
)
from tommybar.refusals import Refusal

COMMON = ("M3", "M4", "M5", "M6", "M8", "M10")


@pytest.mark.parametrize("size", COMMON)
def test_parts_of_one_size_fit_each_other(size: str) -> None:
    """The screw passes the washer, the washer is wider than the hole, the nut spans the hole."""
    nominal = float(size[1:])
    holes = [clearance_hole(size, fit) for fit in CLEARANCES]
    ring = washer(size)

    assert nominal < holes[0] < holes[1] < holes[2] < ring.outside
    assert nominal < ring.inside <= holes[1]
    assert holes[1] < nut(size).across_flats <= ring.outside
    assert screw_head("ISO 4762", size).diameter > holes[2]
    assert nut(size, "ISO 4035").height < nut(size).height
    assert washer(size, "ISO 7092").outside < ring.outside < washer(size, "ISO 7093").outside


@pytest.mark.parametrize("standard", SCREWS)
def test_heads_and_lengths_of_every_standard(standard: str) -> None:
    """Every size has a sound head, and its lengths rise from the shortest to the longest."""
    for size in COMMON:
        head = screw_head(standard, size)
        lengths = standard_screw_lengths(standard, size)
        assert head.diameter > 0
        assert (head.height == 0) == (standard == "ISO 4026")
        assert len(lengths) > 5
        assert list(lengths) == sorted(set(lengths))


def test_fine_thread_counts_as_its_diameter() -> None:
    """M8x1 passes where M8 passes."""
    assert clearance_hole("M8x1") == clearance_hole("M8")


def test_next_stocked_length() -> None:
    """13.2 mm needed is 16 bought; exactly 16 stays 16."""
    assert screw_length_at_least("ISO 4762", "M3", 13.2) == 16
    assert screw_length_at_least("ISO 4762", "M3", 16.0) == 16
    with pytest.raises(Refusal, match=r"must be 31 mm long; the longest stocked is 30 mm"):
        screw_length_at_least("ISO 4762", "M3", 31)


def test_spanners() -> None:
    """Metric by the nut's table, BA by proportion, others refused."""
    assert spanner_across_flats("M8") == 13
    assert spanner_across_flats("0 BA") == pytest.approx(10.5)
    with pytest.raises(Refusal, match="no ISO 4032 nut for 1/4-20 UNC"):
        spanner_across_flats("1/4-20 UNC")


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: clearance_hole("M5", "tight"), 'no "tight" clearance'),
        (lambda: clearance_hole("M36"), "no clearance hole for M36; the table has M1, .*M20"),
        (lambda: screw_head("ISO 4763", "M5"), 'no screws "ISO 4763".*Did you mean "ISO 4762"'),
        (lambda: screw_head("ISO 7380", "M2"), "no ISO 7380 screw for M2"),
        (lambda: nut("M6", "ISO 4033"), 'no nuts "ISO 4033"'),
        (lambda: washer("M6", "ISO 7090"), 'no washers "ISO 7090"'),
        (lambda: nut("M6.5"), 'no thread "M6.5"'),
    ],
)
def test_what_is_not_in_the_tables_is_refused(call: Callable[[], object], words: str) -> None:
    """Each refusal names the thing, what it had and what there is."""
    with pytest.raises(Refusal, match=words):
        call()
