"""Laws of the nest: nothing is lost, nothing overlaps, and more metal never makes it worse."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tommybar.nest.lengths import fewest_bars, fill_offcuts
from tommybar.nest.shelves import shelve

lengths = st.lists(st.integers(5, 120).map(float), min_size=1, max_size=12)
kerfs = st.sampled_from([0.0, 1.0, 1.5, 2.3])
FEW = settings(max_examples=30, deadline=None, derandomize=True)


def load(pieces, places, kerf):
    """What pieces and the kerfs between them take of a bar."""
    return sum(pieces[one] for one in places) + kerf * max(0, len(places) - 1)


@FEW
@given(pieces=lengths, bars=st.lists(st.integers(20, 300).map(float), min_size=1, max_size=5), kerf=kerfs)
def test_every_piece_is_sawn_once_or_left_over_once(pieces, bars, kerf):
    """Pieces on bars and pieces left make up all; no bar is overfilled."""
    filled = fill_offcuts(pieces, bars, kerf, tries=20)

    assert sorted([one for bar in filled.on_bars for one in bar] + list(filled.left_over)) == list(
        range(len(pieces))
    )
    for bar, places in zip(bars, filled.on_bars, strict=True):
        assert load(pieces, places, kerf) <= bar + 1e-9


@FEW
@given(pieces=lengths, kerf=kerfs, spare=st.integers(0, 80))
def test_fewest_bars_is_bounded_from_both_sides(pieces, kerf, spare):
    """Never fewer than the summed lengths ask, never more than one bar a piece, none overfilled."""
    bar = max(pieces) + spare
    packed = fewest_bars(pieces, bar, kerf, tries=20)

    assert sorted(one for places in packed for one in places) == list(range(len(pieces)))
    assert all(load(pieces, places, kerf) <= bar + 1e-9 for places in packed)
    assert sum(pieces) / bar - 1e-9 <= len(packed) <= len(pieces)


@FEW
@given(pieces=lengths, bars=st.lists(st.integers(20, 300).map(float), min_size=1, max_size=4), kerf=kerfs)
def test_one_more_bar_never_leaves_more(pieces, bars, kerf):
    """Another bar of the longest piece's length leaves at most as much unserved."""
    before = fill_offcuts(pieces, bars, kerf)
    after = fill_offcuts(pieces, [*bars, max(pieces)], kerf)

    assert sum(pieces[one] for one in after.left_over) <= sum(pieces[one] for one in before.left_over)


@FEW
@given(
    pieces=st.lists(st.tuples(st.integers(5, 70).map(float), st.integers(5, 70).map(float)), max_size=10),
    kerf=kerfs,
)
def test_a_plate_turned_by_a_quarter_takes_a_piece_turned_by_a_quarter(pieces, kerf):
    """Lengths and widths of all pieces may be exchanged without losing any."""
    _, left = shelve(pieces, 150, 90, kerf)
    _, turned = shelve([(wide, long) for long, wide in pieces], 150, 90, kerf)

    assert len(left) == len(turned)
